#include "tests/faults/fault_vfs.hpp"

#include <sqlite3.h>

#include <cstdlib>
#include <memory>
#include <new>

namespace sillwalk::test {

namespace {

FaultDisk* disk = nullptr;
sqlite3_vfs* real_vfs = nullptr;

/// SQLite allocates this with the real file behind it.
struct ShimFile {
    sqlite3_file base;
    std::string* path;
    [[nodiscard]] sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
};
ShimFile& shim(sqlite3_file* file) {
    return *reinterpret_cast<ShimFile*>(file);
}

Verdict judge(DiskCall call, const std::string& path) {
    return disk->verdict ? disk->verdict(call, path) : Verdict{};
}

void record(DiskCall call, const std::string& path, std::int64_t offset = 0, std::string data = {}) {
    if (disk->recording) disk->events.push_back({call, path, offset, std::move(data)});
}

int close_file(sqlite3_file* file) {
    ShimFile& own = shim(file);
    const int code = own.real()->pMethods ? own.real()->pMethods->xClose(own.real()) : SQLITE_OK;
    delete own.path;
    own.path = nullptr;
    return code;
}
int read_file(sqlite3_file* file, void* into, int count, sqlite3_int64 offset) {
    sqlite3_file* real = shim(file).real();
    return real->pMethods->xRead(real, into, count, offset);
}
int write_file(sqlite3_file* file, const void* from, int count, sqlite3_int64 offset) {
    ShimFile& own = shim(file);
    const Verdict verdict = judge(DiskCall::write, *own.path);
    const int done = verdict.code == SQLITE_OK ? count : verdict.half ? count / 2 : 0;
    if (done > 0) {
        record(DiskCall::write, *own.path, offset,
               std::string(static_cast<const char*>(from), static_cast<std::size_t>(done)));
        const int code = own.real()->pMethods->xWrite(own.real(), from, done, offset);
        if (code != SQLITE_OK) return code;
    }
    return verdict.code;
}
int truncate_file(sqlite3_file* file, sqlite3_int64 size) {
    ShimFile& own = shim(file);
    if (const Verdict verdict = judge(DiskCall::truncate, *own.path); verdict.code != SQLITE_OK) return verdict.code;
    record(DiskCall::truncate, *own.path, size);
    return own.real()->pMethods->xTruncate(own.real(), size);
}
int sync_file(sqlite3_file* file, int) {
    ShimFile& own = shim(file);
    if (const Verdict verdict = judge(DiskCall::sync, *own.path); verdict.code != SQLITE_OK) return verdict.code;
    record(DiskCall::sync, *own.path);
    return SQLITE_OK;  // whether the real disk flushes makes no difference to what is tested, but much to the time
}
int size_of_file(sqlite3_file* file, sqlite3_int64* size) {
    sqlite3_file* real = shim(file).real();
    return real->pMethods->xFileSize(real, size);
}
int lock_file(sqlite3_file* file, int level) {
    sqlite3_file* real = shim(file).real();
    return real->pMethods->xLock(real, level);
}
int unlock_file(sqlite3_file* file, int level) {
    sqlite3_file* real = shim(file).real();
    return real->pMethods->xUnlock(real, level);
}
int reserved_file(sqlite3_file* file, int* out) {
    sqlite3_file* real = shim(file).real();
    return real->pMethods->xCheckReservedLock(real, out);
}
int control_file(sqlite3_file* file, int what, void* data) {
    sqlite3_file* real = shim(file).real();
    return real->pMethods->xFileControl(real, what, data);
}
int sector_size(sqlite3_file* file) {
    sqlite3_file* real = shim(file).real();
    return real->pMethods->xSectorSize(real);
}
int characteristics(sqlite3_file* file) {
    sqlite3_file* real = shim(file).real();
    return real->pMethods->xDeviceCharacteristics(real);
}

/// Version 1: no shared memory, which a log under an exclusive lock does without.
const sqlite3_io_methods methods = {
    1,         close_file,  read_file,     write_file,   truncate_file, sync_file,       size_of_file,
    lock_file, unlock_file, reserved_file, control_file, sector_size,   characteristics, nullptr,
    nullptr,   nullptr,     nullptr,       nullptr,      nullptr};

int open_file(sqlite3_vfs*, const char* path, sqlite3_file* file, int flags, int* out_flags) {
    ShimFile& own = shim(file);
    own.base.pMethods = nullptr;
    const int code = real_vfs->xOpen(real_vfs, path, own.real(), flags, out_flags);
    if (code != SQLITE_OK) return code;
    own.path = new std::string(path ? path : "");
    own.base.pMethods = &methods;
    return SQLITE_OK;
}
int remove_file(sqlite3_vfs*, const char* path, int sync_folder) {
    if (const Verdict verdict = judge(DiskCall::remove, path); verdict.code != SQLITE_OK) return verdict.code;
    record(DiskCall::remove, path);
    return real_vfs->xDelete(real_vfs, path, sync_folder);
}

}  // namespace

FaultDisk::FaultDisk() {
    real_vfs = sqlite3_vfs_find(nullptr);
    static sqlite3_vfs own = *real_vfs;  // the rest of its calls take the real one's data, which the copy holds
    own.pNext = nullptr;
    own.zName = "fault";
    own.szOsFile = static_cast<int>(sizeof(ShimFile)) + real_vfs->szOsFile;
    own.xOpen = open_file;
    own.xDelete = remove_file;
    if (sqlite3_vfs_register(&own, 1) != SQLITE_OK) std::abort();
}

FaultDisk& FaultDisk::stand() {
    static std::unique_ptr<FaultDisk> one(new FaultDisk());
    disk = one.get();
    one->calm();
    return *one;
}

}  // namespace sillwalk::test
