#pragma once

#include "core/document/part_fields.h"

namespace stemwright {

// The keys of edits, as part_fields.h has those of parts. Nothing that an edit says may go unread, so instead
// of extra() they end with io.noMore(), after which any key left over is a problem.

template <class T, template <class> class Shape> inline constexpr bool isOne = false;
template <class Part, template <class> class Shape> inline constexpr bool isOne<Shape<Part>, Shape> = true;

/// An edit of the templates of edit.h, of any part.
template <class T, template <class> class Shape>
concept AnyOf = isOne<std::remove_const_t<T>, Shape>;

template <class Io, Of<SlotRef> T> void fields(Io& io, T& at) {
    io.need("stem", at.stem);
    io.need("tier", at.tier);
    io.need("slot", at.slot);
    io.noMore();
}

template <class Io, Of<FillSlot> T> void fields(Io& io, T& edit) {
    io.need("at", edit.at);
    io.may("kind", edit.leaf.kind);
    io.may("mix", edit.leaf.mix);
    io.noMore();
}

template <class Io, Of<SwapSlots> T> void fields(Io& io, T& edit) {
    io.need("a", edit.a);
    io.need("b", edit.b);
    io.noMore();
}

template <class Io, Of<PinSlot> T> void fields(Io& io, T& edit) {
    io.need("at", edit.at);
    io.need("pinned", edit.pinned);
    io.noMore();
}

template <class Io, Of<OpenTier> T> void fields(Io& io, T& edit) {
    io.need("stem", edit.stem);
    io.need("index", edit.index);
    io.need("tier", edit.tier);
    io.noMore();
}

template <class Io, Of<CloseTier> T> void fields(Io& io, T& edit) {
    io.need("stem", edit.stem);
    io.need("index", edit.index);
    io.noMore();
}

template <class Io, Of<MoveTiers> T> void fields(Io& io, T& edit) {
    io.need("from", edit.from);
    io.need("index", edit.index);
    io.need("count", edit.count);
    io.need("to", edit.to);
    io.need("to_index", edit.toIndex);
    io.noMore();
}

template <class Io, Of<TurnTier> T> void fields(Io& io, T& edit) {
    io.need("stem", edit.stem);
    io.need("index", edit.index);
    io.need("turn_deg", edit.turn);
    io.noMore();
}

template <class Io, Of<SpaceTier> T> void fields(Io& io, T& edit) {
    io.need("stem", edit.stem);
    io.need("index", edit.index);
    io.may("spacing_mm", edit.spacing);
    io.noMore();
}

template <class Io, Of<MarkTier> T> void fields(Io& io, T& edit) {
    io.need("stem", edit.stem);
    io.need("index", edit.index);
    io.need("progress", edit.progress);
    io.noMore();
}

template <class Io, Of<ReformStem> T> void fields(Io& io, T& edit) {
    io.need("stem", edit.stem);
    io.need("form", edit.form);
    io.noMore();
}

template <class Io, Of<ReformKind> T> void fields(Io& io, T& edit) {
    io.need("kind", edit.kind);
    io.need("form", edit.form);
    io.noMore();
}

template <class Io, Of<SetStock> T> void fields(Io& io, T& edit) {
    io.need("kind", edit.kind);
    io.list("stock", edit.stock, limits::mixes);
    io.noMore();
}

template <class Io, AnyOf<Insert> T> void fields(Io& io, T& edit) {
    io.need("index", edit.index);
    io.need("part", edit.part);
    io.noMore();
}

template <class Io, AnyOf<Remove> T> void fields(Io& io, T& edit) {
    io.need("id", edit.id);
    io.noMore();
}

template <class Io, AnyOf<Move> T> void fields(Io& io, T& edit) {
    io.need("id", edit.id);
    io.need("index", edit.index);
    io.noMore();
}

template <class Io, AnyOf<Replace> T> void fields(Io& io, T& edit) {
    io.need("part", edit.part);
    io.noMore();
}

template <class Io, AnyOf<Set> T> void fields(Io& io, T& edit) {
    io.need("part", edit.part);
    io.noMore();
}

template <class Io, Of<Batch> T> void fields(Io& io, T& edit) {
    io.need("deed", edit.deed);
    io.edits("edits", edit.edits);
    io.noMore();
}

} // namespace stemwright
