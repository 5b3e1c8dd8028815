#pragma once
/// One page with the whole drawing vocabulary, for the gallery.

#include "app/ui/ui.hpp"

namespace sillwalk::test {

void draw_vocabulary(ui::Ui& kit);

}  // namespace sillwalk::test
