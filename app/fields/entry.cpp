#include "app/fields/entry.h"

#include "app/wording.h"
#include "core/plan/limits.h"

#include <QCoreApplication>
#include <QLocale>
#include <QRegularExpression>

#include <cmath>

namespace stemwright {

namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("Entry", source);
}

/// The text as it was typed, short enough for a sentence.
QString shown(const QString& typed) {
    const QString simple = typed.simplified();
    return simple.size() > 40 ? simple.left(40) + QStringLiteral("…") : simple;
}

QString outside(const QString& value, bool tooSmall, const QString& least, const QString& most) {
    return tooSmall ? tr("%1 is too small: from %2 to %3 is possible.").arg(value, least, most)
                    : tr("%1 is too large: from %2 to %3 is possible.").arg(value, least, most);
}

} // namespace

DecimalMark decimalMark() {
    return QLocale().decimalPoint() == QLatin1String(",") ? DecimalMark::comma : DecimalMark::point;
}

QString entryText(Length length, LengthUnit unit) {
    const QString number = text(lengthNumberText(length, unit, decimalMark()));
    return unit == LengthUnit::inch ? tr("%1 in").arg(number) : tr("%1 mm").arg(number);
}

QString entryText(double value, int decimals) {
    return text(numberText(value, decimals, decimalMark()));
}

Entry<Length> readLength(const QString& typed, LengthUnit unit, Length least, Length most) {
    const auto value = parseLength(typed.toStdString(), unit, decimalMark());
    if (!value)
        return {std::nullopt,
                typed.trimmed().isEmpty()
                    ? tr("A length is missing here.")
                    : tr("“%1” is no length; one is written like %2.")
                          .arg(shown(typed), unit == LengthUnit::inch
                                                 ? tr("6 1/4 in")
                                                 : entryText(millimetres(6.5), LengthUnit::millimetre))};
    if (*value < least || *value > most)
        return {std::nullopt,
                outside(shown(typed), *value < least, entryText(least, unit), entryText(most, unit))};
    return {value, {}};
}

Entry<double> readNumber(const QString& typed, double least, double most, int decimals) {
    const auto value = parseNumber(typed.toStdString(), decimalMark());
    if (!value)
        return {std::nullopt, typed.trimmed().isEmpty() ? tr("A number is missing here.")
                                                        : tr("“%1” is no number.").arg(shown(typed))};
    if (*value < least || *value > most)
        return {std::nullopt,
                outside(shown(typed), *value < least, entryText(least, decimals), entryText(most, decimals))};
    return {value, {}};
}

Entry<int> readCount(const QString& typed, int least, int most) {
    const Entry<double> value = readNumber(typed, least, most, 0);
    if (!value.value)
        return {std::nullopt, value.refusal};
    if (*value.value != std::floor(*value.value))
        return {std::nullopt, tr("“%1” is no whole number.").arg(shown(typed))};
    return {static_cast<int>(*value.value), {}};
}

Entry<std::optional<GaugeNumber>> readGauge(const QString& typed, GaugeSystem usual) {
    QString rest = typed.simplified().toLower();
    if (rest.isEmpty())
        return {std::optional<GaugeNumber>(), {}};
    GaugeNumber gauge{usual, 0};
    for (const auto& [system, word] : {std::pair{GaugeSystem::awg, QStringLiteral("awg")},
                                       std::pair{GaugeSystem::swg, QStringLiteral("swg")},
                                       std::pair{GaugeSystem::steel, systemText(GaugeSystem::steel).toLower()},
                                       std::pair{GaugeSystem::steel, QStringLiteral("steel")}})
        if (rest.contains(word)) {
            gauge.system = system;
            rest.remove(word);
            break;
        }
    bool whole = false;
    gauge.number = rest.trimmed().toInt(&whole);
    if (!whole)
        return {std::nullopt, tr("“%1” is no wire number; one is written like AWG 28.").arg(shown(typed))};
    if (!diameterOf(gauge))
        return {std::nullopt, tr("The wire numbers known here run from %1 to %2; give the diameter instead.")
                                  .arg(thickestGauge)
                                  .arg(thinnestGauge)};
    return {std::optional(gauge), {}};
}

Entry<Length> readWire(const QString& typed) {
    const auto least = millimetres(limits::thinnestWire), most = millimetres(limits::thickestWire);
    const auto value = parseLength(typed.toStdString(), LengthUnit::millimetre, decimalMark());
    const double number = value ? inMillimetres(*value) : 0;
    if (number > inMillimetres(most) && number == std::floor(number) && number <= thinnestGauge) {
        QStringList meant;
        for (const GaugeSystem system : {GaugeSystem::awg, GaugeSystem::swg, GaugeSystem::steel})
            if (const auto diameter = diameterOf({system, static_cast<int>(number)}))
                meant += tr("%1 is %2")
                             .arg(gaugeText({system, static_cast<int>(number)}),
                                  entryText(inMillimetres(*diameter), 2) + QStringLiteral(" mm"));
        if (!meant.isEmpty())
            return {std::nullopt, tr("A wire %1 mm thick would be a rod; was the wire number %1 meant? %2.")
                                      .arg(entryText(number, 0), meant.join(QStringLiteral(", ")))};
    }
    return readLength(typed, LengthUnit::millimetre, least, most);
}

QString nameRefusal(const QString& text) {
    const auto size = static_cast<std::size_t>(text.toUtf8().size());
    if (size > limits::nameLength)
        return tr("This name is too long: %1 bytes of UTF-8 are the most.").arg(limits::nameLength);
    return {};
}

} // namespace stemwright
