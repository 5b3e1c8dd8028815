#pragma once
/// A folder of its own for one test, gone afterwards.

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

namespace sillwalk::test {

class Scratch {
public:
    Scratch() {
        std::string name = (std::filesystem::temp_directory_path() / "sillwalk-test-XXXXXX").string();
        if (::mkdtemp(name.data())) folder_ = name;
    }
    ~Scratch() {
        std::error_code ignored;
        std::filesystem::remove_all(folder_, ignored);
    }
    Scratch(const Scratch&) = delete;
    Scratch& operator=(const Scratch&) = delete;
    [[nodiscard]] std::string file(const std::string& name) const { return (folder_ / name).string(); }

private:
    std::filesystem::path folder_;
};

/// All of a file; empty where there is none.
inline std::string file_bytes(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream bytes;
    bytes << file.rdbuf();
    return bytes.str();
}

}  // namespace sillwalk::test
