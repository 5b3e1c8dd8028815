// assess, and nothing else of the desk tool.

#include "platforms/desk/subcommand.hpp"

int main(int argc, char** argv) {
    return sillwalk::desk::run_assess(argc, argv);
}
