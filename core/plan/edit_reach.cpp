// Which stems an edit may change: reachOf() of edit.h.
#include "core/plan/edit.h"

#include <algorithm>

namespace stemwright {

namespace {

class ReachFinder {
public:
    Reach reach;

    void operator()(const FillSlot& e) { add(e.at.stem); }
    void operator()(const SwapSlots& e) {
        add(e.a.stem);
        add(e.b.stem);
    }
    void operator()(const PinSlot& e) { add(e.at.stem); }
    void operator()(const MoveTiers& e) {
        add(e.from);
        add(e.to);
    }
    void operator()(const Batch& e) {
        for (const Edit& edit : e.edits)
            std::visit(*this, edit.what);
    }
    template <class E> void operator()(const E& e) {
        if constexpr (requires { e.stem; })
            add(e.stem);
        else
            reach.everything = true;
    }

private:
    void add(StemId id) {
        if (std::find(reach.stems.begin(), reach.stems.end(), id) == reach.stems.end())
            reach.stems.push_back(id);
    }
};

} // namespace

Reach reachOf(const Edit& edit) {
    ReachFinder finder;
    std::visit(finder, edit.what);
    return std::move(finder.reach);
}

} // namespace stemwright
