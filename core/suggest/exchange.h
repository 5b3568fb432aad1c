#pragma once

#include "core/plan/edit.h"

#include <vector>

namespace stemwright {

/// A slot that shall hold another leaf.
struct Change {
    SlotRef at;
    Leaf now;
    Leaf wanted;
};

/// Edits that make the changes one after another without ever asking the tray for a leaf that it has not got:
/// leaves that other changes want elsewhere are exchanged with them, two for two where that suits both, and
/// only what no changed slot holds comes from the tray. The changes together must not need more leaves than
/// there are. Changes from a leaf to the same leaf are left out.
std::vector<Edit> exchanges(std::vector<Change> changes);

} // namespace stemwright
