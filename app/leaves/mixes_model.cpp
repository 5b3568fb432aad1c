#include "app/leaves/mixes_model.h"

#include "app/fields/entry.h"
#include "app/leaves/mix_text.h"
#include "app/wording.h"
#include "core/document/new_plan.h"
#include "core/plan/limits.h"

#include <algorithm>

namespace stemwright {

MixesModel::MixesModel(Session& session, QObject* parent) : PartsModel(session, parent) {
    refresh();
}

void MixesModel::setKind(KindId kind) {
    kind_ = kind;
    refresh();
}

QString MixesModel::fieldName(int field) const {
    switch (field) {
    case Field::code:
        return tr("Code");
    case Field::name:
        return tr("Name");
    default:
        return tr("Colours, outside in");
    }
}

QString MixesModel::shown(int line, int field) const {
    const Mix& mix = part(line);
    switch (field) {
    case Field::code:
        return text(mix.code);
    case Field::name:
        return text(mix.name);
    default:
        return mixText(plan(), mix.colours);
    }
}

QVariant MixesModel::more(int line, int field, int role) const {
    if (role == Qt::DecorationRole && field == Field::code) {
        const LeafLook look =
            find(plan(), kind_) ? lookOf(plan(), {kind_, mix(line)}) : lookOfMix(plan(), mix(line));
        return pictures_.picture(look, {40, 22});
    }
    if (role == Qt::ToolTipRole && field == Field::colours)
        return tr("From the outer row inward, with shares where they differ: Plum 2 + Frost 1");
    return {};
}

QString MixesModel::write(Plan& draft, int line, int field, const QString& typed) const {
    Mix& mix = part(draft, line);
    const QString plain = typed.trimmed();
    switch (field) {
    case Field::code: {
        const bool fits =
            plain.toUcs4().size() >= 1 && plain.toUcs4().size() <= 2 &&
            std::none_of(plain.begin(), plain.end(), [](QChar c) { return c.isSpace() || !c.isPrint(); });
        if (!fits)
            return tr("“%1” is no code; a code is one or two letters.").arg(plain.left(40));
        mix.code = plain.toStdString();
        return {};
    }
    case Field::name:
        mix.name = plain.toStdString();
        return nameRefusal(plain);
    default:
        return readMix(draft, typed, mix.colours);
    }
}

QString MixesModel::verify(const Plan& draft) const {
    for (auto a = draft.mixes.begin(); a != draft.mixes.end(); ++a)
        for (auto b = draft.mixes.begin(); b != a; ++b)
            if (a->code == b->code)
                return tr("the code %1 belongs to %2 already.")
                    .arg(text(a->code),
                         text(find(plan(), b->id) && find(plan(), b->id)->code == b->code ? b->name : a->name));
    return {};
}

QString MixesModel::addTo(Plan& draft) const {
    if (draft.colours.empty())
        return tr("A mix is made of colours: add a colour first.");
    std::vector<std::string> taken;
    for (const Mix& mix : draft.mixes)
        taken.push_back(mix.code);
    // A colour that no mix begins with yet is the likeliest to be wanted.
    const auto colour = std::find_if(draft.colours.begin(), draft.colours.end(), [&](const Colour& c) {
        return std::none_of(draft.mixes.begin(), draft.mixes.end(),
                            [&](const Mix& mix) { return mix.colours.front().colour == c.id; });
    });
    const Colour& first = colour == draft.colours.end() ? draft.colours.front() : *colour;
    draft.mixes.push_back({freeMixId(draft), first.name, freeCode(first.name, taken), {{first.id, 1, ""}}, ""});
    return {};
}

std::optional<Edit> MixesModel::removal(const QList<int>& lines, QString& why) const {
    Batch batch{Deed::removePart, {}};
    // Empty lines of stock go with their mix; leaves never do.
    for (const Kind& kind : plan().kinds) {
        std::vector<StockLine> stock = kind.stock;
        for (const int line : lines) {
            const auto at = std::find_if(stock.begin(), stock.end(),
                                         [&](const StockLine& s) { return s.mix == mix(line); });
            if (at == stock.end())
                continue;
            if (at->total() > 0) {
                why = tr("%1 cannot go while the stock of %2 has %n leaves of it.", nullptr, at->total())
                          .arg(lineName(line), text(kind.name));
                return std::nullopt;
            }
            stock.erase(at);
        }
        if (stock.size() != kind.stock.size())
            batch.edits.push_back(SetStock{kind.id, std::move(stock)});
    }
    for (const int line : lines)
        batch.edits.push_back(Remove<MixId>{mix(line)});
    return batch.edits.size() == 1 ? batch.edits.front() : Edit(std::move(batch));
}

MixColoursModel::MixColoursModel(Session& session, QObject* parent) : TableModel(session, parent) {
    refresh();
}

void MixColoursModel::setMix(MixId mix) {
    if (mix == mix_)
        return;
    mix_ = mix;
    refresh();
}

const Mix* MixColoursModel::shownMix() const {
    return find(plan(), mix_);
}

Mix* MixColoursModel::mixIn(Plan& plan, MixId id) {
    const auto it =
        std::find_if(plan.mixes.begin(), plan.mixes.end(), [&](const Mix& m) { return m.id == id; });
    return it == plan.mixes.end() ? nullptr : &*it;
}

QString MixColoursModel::fieldName(int field) const {
    switch (field) {
    case Field::colour:
        return tr("Colour");
    case Field::share:
        return tr("Share");
    default:
        return tr("Part");
    }
}

QString MixColoursModel::lineName(int line) const {
    if (line == 0)
        return lines() == 1 ? tr("all") : tr("outer");
    return line == lines() - 1 ? tr("inner") : tr("%1.", "a row between outer and inner").arg(line + 1);
}

bool MixColoursModel::editable(int, int field) const {
    return field != Field::part;
}

QStringList MixColoursModel::choices(int, int field) const {
    QStringList names;
    if (field == Field::colour)
        for (const Colour& colour : plan().colours)
            names += text(colour.name);
    return names;
}

std::vector<std::uint32_t> MixColoursModel::keysOf(const Plan& plan) const {
    // A share has no id; its place must do, beside the mix that it is a share of.
    std::vector<std::uint32_t> keys;
    if (const Mix* mix = find(plan, mix_))
        for (std::size_t i = 0; i < mix->colours.size(); ++i)
            keys.push_back(mix->id.value * 64 + static_cast<std::uint32_t>(i));
    return keys;
}

QString MixColoursModel::shown(int line, int field) const {
    const BeadShare& share = shownMix()->colours.at(static_cast<std::size_t>(line));
    switch (field) {
    case Field::colour: {
        const Colour* found = find(plan(), share.colour);
        return found ? text(found->name) : QString();
    }
    case Field::share:
        return entryText(share.share, 6);
    default: {
        double all = 0;
        for (const BeadShare& each : shownMix()->colours)
            all += each.share;
        return tr("%1 %").arg(entryText(100 * share.share / all, 0));
    }
    }
}

QVariant MixColoursModel::more(int line, int field, int role) const {
    if (role == Qt::DecorationRole && field == Field::colour)
        if (const Colour* found = find(plan(), shownMix()->colours.at(static_cast<std::size_t>(line)).colour))
            return swatch(toColour(found->srgb));
    if (role == Qt::TextAlignmentRole && field != Field::colour)
        return QVariant(Qt::AlignRight | Qt::AlignVCenter);
    return {};
}

QString MixColoursModel::write(Plan& draft, int line, int field, const QString& typed) const {
    Mix* mix = mixIn(draft, mix_);
    if (!mix)
        return tr("this mix is gone.");
    BeadShare& wanted = mix->colours.at(static_cast<std::size_t>(line));
    if (field == Field::share) {
        const Entry<double> value = readNumber(typed, 1e-6, 1e6, 6);
        if (value.value)
            wanted.share = *value.value;
        return value.refusal;
    }
    for (const Colour& colour : draft.colours)
        if (text(colour.name).trimmed().compare(typed.trimmed(), Qt::CaseInsensitive) == 0) {
            wanted.colour = colour.id;
            return {};
        }
    return tr("There is no colour “%1” in this plan.").arg(typed.trimmed().left(40));
}

QString MixColoursModel::addTo(Plan& draft) const {
    Mix* mix = mixIn(draft, mix_);
    if (!mix)
        return tr("Choose a mix first.");
    if (mix->colours.size() >= limits::coloursInMix)
        return tr("%1 colours are the most in one mix.").arg(limits::coloursInMix);
    const auto next = std::find_if(draft.colours.begin(), draft.colours.end(), [&](const Colour& c) {
        return std::none_of(mix->colours.begin(), mix->colours.end(),
                            [&](const BeadShare& s) { return s.colour == c.id; });
    });
    mix->colours.push_back({next == draft.colours.end() ? draft.colours.front().id : next->id, 1, ""});
    return {};
}

std::optional<Edit> MixColoursModel::removal(const QList<int>& lines, QString& why) const {
    Mix mix = *shownMix();
    if (lines.size() >= static_cast<int>(mix.colours.size())) {
        why = tr("A mix needs one colour at least.");
        return std::nullopt;
    }
    std::vector<BeadShare> kept;
    for (int i = 0; i < static_cast<int>(mix.colours.size()); ++i)
        if (!lines.contains(i))
            kept.push_back(mix.colours[static_cast<std::size_t>(i)]);
    mix.colours = std::move(kept);
    return Edit(Replace<Mix>{std::move(mix)});
}

std::optional<Edit> MixColoursModel::moving(int line, int to) const {
    Mix mix = *shownMix();
    const auto from = mix.colours.begin() + line;
    if (to < line)
        std::rotate(mix.colours.begin() + to, from, from + 1);
    else
        std::rotate(from, from + 1, mix.colours.begin() + to + 1);
    return Edit(Replace<Mix>{std::move(mix)});
}

} // namespace stemwright
