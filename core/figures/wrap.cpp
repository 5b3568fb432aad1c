#include "core/figures/wrap.h"

#include "core/quantity/helix.h"

namespace stemwright {

std::vector<WrapFigures> wrapFigures(const Binding& binding, std::span<const Stretch> stretches) {
    std::vector<WrapFigures> figures;
    figures.reserve(binding.wraps.size());
    Length inside;
    for (const Wrap& wrap : binding.wraps) {
        Length turns;
        for (const Stretch& stretch : stretches)
            if (stretch.bundle > Length{})
                turns +=
                    wound({stretch.bundle + inside, wrap.thickness, wrap.strands * wrap.width, wrap.overlap},
                          stretch.along)
                        .length;
        WrapFigures taken;
        if (turns > Length{}) {
            taken.used = turns / wrap.stretch + wrap.startTail + wrap.finish;
            taken.toCut = taken.used + wrap.hold;
        }
        figures.push_back(taken);
        inside += 2 * wrap.thickness;
    }
    return figures;
}

} // namespace stemwright
