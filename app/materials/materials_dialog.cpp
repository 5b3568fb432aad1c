#include "app/materials/materials_dialog.h"

#include "app/materials/handbook.h"
#include "app/messages.h"
#include "app/wording.h"
#include "core/plan/limits.h"

#include <QLabel>
#include <QTabWidget>
#include <QVBoxLayout>

namespace stemwright {

namespace {

using Sort = MaterialColumn::Sort;

/// What is kept of an entry besides what the table shows, by its key.
template <class Own> Own keptOf(const std::vector<Own>& before, const OwnLine& line) {
    Own own = line.key >= 0 && line.key < static_cast<int>(before.size())
                  ? before[static_cast<std::size_t>(line.key)]
                  : Own{};
    own.name = line.name.toStdString();
    return own;
}

/// A value in a unit of its own, such as grams of a hundred: what nobody has touched stays as it was.
double back(double shown, double before, double times) {
    return shown == before * times ? before : shown / times;
}

constexpr double hundred = 100;

OwnLine lineOf(const OwnMetal& own, int key) {
    return {text(own.name), {own.density, own.modulus, own.yield}, key};
}
OwnLine lineOf(const OwnBead& own, int key) {
    return {text(own.name),
            {inMillimetres(own.diameter), inMillimetres(own.pitch), hundred * inGrams(own.mass)},
            key};
}
OwnLine lineOf(const OwnFloss& own, int key) {
    return {text(own.name),
            {own.strands, inMillimetres(own.strandWidth),
             own.skein ? std::optional(inMillimetres(*own.skein)) : std::nullopt, hundred * own.gramsPerMetre},
            key};
}
OwnLine lineOf(const OwnTape& own, int key) {
    return {text(own.name),
            {inMillimetres(own.width), inMillimetres(own.thickness), own.stretch,
             own.roll ? std::optional(inMillimetres(*own.roll)) : std::nullopt,
             own.gramsPerMetre > 0 ? std::optional(hundred * own.gramsPerMetre) : std::nullopt},
            key};
}
OwnLine lineOf(const OwnFilling& own, int key) {
    return {text(own.name), {own.density}, key};
}

template <class Own> std::vector<OwnLine> linesOf(const std::vector<Own>& entries) {
    std::vector<OwnLine> lines;
    for (std::size_t i = 0; i < entries.size(); ++i)
        lines.push_back(lineOf(entries[i], static_cast<int>(i)));
    return lines;
}

template <class Own> OwnLine freshOf(const QString& name) {
    OwnLine line = lineOf(Own{}, -1);
    line.name = name;
    return line;
}

} // namespace

MaterialsDialog::MaterialsDialog(const Plan& plan, QWidget* parent)
    : FormDialog(QStringLiteral("materialsDialog"), tr("Materials"), tr("OK"), parent),
      plan_(plan),
      tabs_(new QTabWidget(this)) {
    namespace most = limits;
    auto* how =
        new QLabel(tr("The handbook's values stay as they are. An entry of yours with the same name stands "
                      "in their place, in this plan."),
                   this);
    how->setProperty("quiet", true);
    how->setWordWrap(true);
    body()->addWidget(how);
    nameField(tabs_, QStringLiteral("materialsTabs"), tr("Materials"));
    body()->addWidget(tabs_, 1);
    const LengthUnit unit = plan.units.length;
    const auto table = [&](const QString& name, const QString& title, std::vector<MaterialColumn> columns,
                           const OwnLine& fresh) {
        auto* made = new MaterialTable(name, title, std::move(columns), unit, fresh, this);
        tabs_->addTab(made, title);
        return made;
    };
    const MaterialColumn density{tr("Density, kg/m³"), Sort::number, most::lightest, most::densest, 0};
    metals_ = table(QStringLiteral("metals"), tr("Metals"),
                    {density,
                     {tr("Stiffness, N/mm²"), Sort::number, 1, most::stiffest, 0, false, tr("Young's modulus")},
                     {tr("Yield, N/mm²"), Sort::number, 0.1, most::stiffest, 1, false,
                      tr("0.2 % proof stress, the lowest that is likely")}},
                    freshOf<OwnMetal>(tr("my wire")));
    beads_ = table(QStringLiteral("beads"), tr("Beads"),
                   {{tr("Diameter"), Sort::millimetres, 0.1, most::largestBead, 2},
                    {tr("Length on the wire"), Sort::millimetres, 0.1, most::largestBead, 2, false,
                     tr("String a hundred and divide by a hundred")},
                    {tr("Mass of 100, g"), Sort::number, 0, hundred * most::heaviestBead, 3, false,
                     tr("0 where nobody weighed any")}},
                   freshOf<OwnBead>(tr("my beads")));
    flosses_ = table(QStringLiteral("flosses"), tr("Floss"),
                     {{tr("Strands"), Sort::count, 1, most::strands, 0},
                      {tr("Width of a strand"), Sort::millimetres, most::thinnestWire, most::widest, 3},
                      {tr("Length of a skein"), Sort::length, most::shortestSold, most::longestWire, 2, true},
                      {tr("Mass of 100 m of a strand, g"), Sort::number, 0, hundred * most::heaviestMetre, 3}},
                     freshOf<OwnFloss>(tr("my floss")));
    tapes_ = table(QStringLiteral("tapes"), tr("Tape"),
                   {{tr("Width"), Sort::millimetres, most::thinnestWire, most::widest, 2},
                    {tr("Thickness"), Sort::millimetres, most::thinnestWrap, most::thickest, 3},
                    {tr("Stretched to, times"), Sort::number, 1, most::mostStretch, 2},
                    {tr("Length of a roll"), Sort::length, most::shortestSold, most::longestWire, 2, true},
                    {tr("Mass of 100 m, g"), Sort::number, 0, hundred * most::heaviestMetre, 2, true}},
                   freshOf<OwnTape>(tr("my tape")));
    clays_ = table(QStringLiteral("clays"), tr("Clay"), {density}, freshOf<OwnFilling>(tr("my clay")));
    covers_ = table(QStringLiteral("covers"), tr("Cover"), {density}, freshOf<OwnFilling>(tr("my cover")));

    metals_->fill(handbook::metals(), linesOf(plan.own.metals));
    beads_->fill(handbook::beads(), linesOf(plan.own.beads));
    flosses_->fill(handbook::flosses(), linesOf(plan.own.flosses));
    tapes_->fill(handbook::tapes(), linesOf(plan.own.tapes));
    clays_->fill(handbook::clays(), linesOf(plan.own.clays));
    covers_->fill(handbook::covers(), linesOf(plan.own.covers));
    resize(940, 560);
}

OwnTables MaterialsDialog::tables() const {
    OwnTables own = plan_.own;
    own.metals.clear();
    for (const OwnLine& line : metals_->own()) {
        OwnMetal entry = keptOf(plan_.own.metals, line);
        entry.density = *line.values[0];
        entry.modulus = *line.values[1];
        entry.yield = *line.values[2];
        own.metals.push_back(std::move(entry));
    }
    own.beads.clear();
    for (const OwnLine& line : beads_->own()) {
        OwnBead entry = keptOf(plan_.own.beads, line);
        entry.diameter = millimetres(*line.values[0]);
        entry.pitch = millimetres(*line.values[1]);
        entry.mass = grams(back(*line.values[2], inGrams(entry.mass), hundred));
        own.beads.push_back(std::move(entry));
    }
    own.flosses.clear();
    for (const OwnLine& line : flosses_->own()) {
        OwnFloss entry = keptOf(plan_.own.flosses, line);
        entry.strands = static_cast<int>(*line.values[0]);
        entry.strandWidth = millimetres(*line.values[1]);
        entry.skein = line.values[2] ? std::optional(millimetres(*line.values[2])) : std::nullopt;
        entry.gramsPerMetre = back(*line.values[3], entry.gramsPerMetre, hundred);
        own.flosses.push_back(std::move(entry));
    }
    own.tapes.clear();
    for (const OwnLine& line : tapes_->own()) {
        OwnTape entry = keptOf(plan_.own.tapes, line);
        entry.width = millimetres(*line.values[0]);
        entry.thickness = millimetres(*line.values[1]);
        entry.stretch = *line.values[2];
        entry.roll = line.values[3] ? std::optional(millimetres(*line.values[3])) : std::nullopt;
        entry.gramsPerMetre = line.values[4] ? back(*line.values[4], entry.gramsPerMetre, hundred) : 0;
        own.tapes.push_back(std::move(entry));
    }
    const auto fillings = [](const MaterialTable* table, const std::vector<OwnFilling>& before) {
        std::vector<OwnFilling> entries;
        for (const OwnLine& line : table->own()) {
            OwnFilling entry = keptOf(before, line);
            entry.density = *line.values[0];
            entries.push_back(std::move(entry));
        }
        return entries;
    };
    own.clays = fillings(clays_, plan_.own.clays);
    own.covers = fillings(covers_, plan_.own.covers);
    return own;
}

QString MaterialsDialog::problem() {
    for (MaterialTable* table : {metals_, beads_, flosses_, tapes_, clays_, covers_})
        if (const QString why = table->refusal(); !why.isEmpty()) {
            tabs_->setCurrentWidget(table);
            return why;
        }
    const auto change = edit();
    if (!change)
        return {};
    Plan trial = plan_;
    const Result<Edit> done = apply(trial, *change);
    return done ? QString() : sentence(done.problem());
}

std::optional<Edit> MaterialsDialog::edit() const {
    OwnTables now = tables();
    if (now == plan_.own)
        return std::nullopt;
    return Edit(Set<OwnTables>{std::move(now)});
}

} // namespace stemwright
