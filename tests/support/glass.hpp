#pragma once
/// The millimetres of the interface design, written out here: not the app's own.

#include "app/ui/hit_map.hpp"

namespace sillwalk::test {

/// Smallest width and height of a target.
inline double least_mm(ui::TargetClass target_class, bool glove) {
    switch (target_class) {
        case ui::TargetClass::row:
            return glove ? 14 : 9.6;
        case ui::TargetClass::key:
            return glove ? 15.2 : 12;
        case ui::TargetClass::irreversible:
            return glove ? 20 : 14;
    }
    return 0;
}

}  // namespace sillwalk::test
