#include "app/sheet_words.h"

#include "app/cautions.h"
#include "app/sheet_sentences.h"
#include "app/wording.h"

#include <QCoreApplication>
#include <QLocale>

#include <cmath>

namespace stemwright {

namespace {

QString tr(const char* source, const char* note = nullptr) {
    return QCoreApplication::translate("Sheets", source, note);
}

/// A figure and its unit, or a gauge and its number, in one piece: its spaces do not break between lines.
QString unbroken(QString figure) {
    for (qsizetype i = 1; i + 1 < figure.size(); ++i)
        if (figure[i] == QLatin1Char(' ') && (figure[i - 1].isDigit() || figure[i + 1].isDigit()))
            figure[i] = QChar::Nbsp;
    return figure;
}

std::string out(const QString& text) {
    return text.toStdString();
}

std::string figureOut(const QString& figure) {
    return out(unbroken(figure));
}

} // namespace

std::string TranslatedWords::word(SheetWord which, const std::vector<std::string>& values) const {
    QString said = sheetSentence(which);
    // All at once, so that a "%1" in a value stays what it is.
    switch (values.size()) {
    case 0:
        return out(said);
    case 1:
        return out(said.arg(text(values[0])));
    case 2:
        return out(said.arg(text(values[0]), text(values[1])));
    case 3:
        return out(said.arg(text(values[0]), text(values[1]), text(values[2])));
    default:
        return out(said.arg(text(values[0]), text(values[1]), text(values[2]), text(values[3])));
    }
}

std::string TranslatedWords::size(Length length) const {
    return figureOut(sizeText(length, units_));
}
std::string TranslatedWords::cut(Length length) const {
    return figureOut(cutText(length, units_));
}
std::string TranslatedWords::wire(Length diameter, const std::optional<GaugeNumber>& gauge) const {
    return figureOut(wireText(diameter, gauge));
}
std::string TranslatedWords::mass(Mass mass) const {
    return figureOut(massText(mass, units_));
}
std::string TranslatedWords::metal(const MetalName& metal) const {
    return out(metalText(metal));
}
std::string TranslatedWords::cost(double cost) const {
    return out(QLocale().toString(cost, 'f', 2));
}
std::string TranslatedWords::hours(double minutes) const {
    return figureOut(minutes < 90 ? tr("%1 min").arg(QLocale().toString(std::ceil(minutes), 'f', 0))
                                  : tr("%1 h").arg(QLocale().toString(minutes / 60, 'f', 1)));
}
std::string TranslatedWords::count(std::int64_t count) const {
    return out(countText(count));
}
std::string TranslatedWords::drift(double drift) const {
    return out(driftText(drift));
}

std::string TranslatedWords::wrap(const Wrap& wrap) const {
    const QString name = [&] {
        if (!wrap.name.empty())
            return text(wrap.name);
        switch (wrap.with) {
        case WrapWith::wire:
            return tr("binding wire %1").arg(wireText(wrap.width, wrap.gauge));
        case WrapWith::floss:
            return wrap.strands == 1 ? tr("floss (1 strand)") : tr("floss (%1 strands)").arg(wrap.strands);
        case WrapWith::tape:
            break;
        }
        return tr("tape %1").arg(sizeText(wrap.width, units_));
    }();
    return figureOut(name);
}

std::string TranslatedWords::arrangement(Arrangement arrangement) const {
    return atStart(out(arrangementText(arrangement)));
}
std::string TranslatedWords::atStart(const std::string& said) const {
    QString line = text(said);
    if (!line.isEmpty())
        line[0] = line[0].toUpper();
    return out(line);
}
std::string TranslatedWords::plane(Plane plane) const {
    return out(planeText(plane));
}
std::string TranslatedWords::side(Side side) const {
    return out(sideText(side));
}

std::string TranslatedWords::caution(SheetCaution caution) const {
    switch (caution) {
    case SheetCaution::cutWire:
        return out(cautionText(Caution::cutWire));
    case SheetCaution::sharpEnds:
        return out(cautionText(Caution::sharpEnds));
    case SheetCaution::smallParts:
        return out(cautionText(Caution::smallParts));
    case SheetCaution::oldGlass:
        return out(cautionText(Caution::oldGlass));
    case SheetCaution::plated:
        return out(cautionText(Caution::plated));
    case SheetCaution::tallPlant:
        return out(cautionText(Caution::tallPlant));
    case SheetCaution::wetClay:
        return out(cautionText(Caution::wetClay));
    case SheetCaution::estimate:
        return out(cautionText(Caution::estimate));
    }
    return {};
}

} // namespace stemwright
