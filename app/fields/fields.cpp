#include "app/fields/fields.h"

#include "app/look.h"
#include "app/wording.h"
#include "core/plan/limits.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QRegularExpression>
#include <QSignalBlocker>
#include <QStyle>

#include <algorithm>
#include <cmath>

namespace stemwright {

EntryField::EntryField(QWidget* parent) : QLineEdit(parent) {
    setMinimumHeight(look::target);
    connect(this, &QLineEdit::editingFinished, this, &EntryField::mark);
    connect(this, &QLineEdit::textChanged, this, [this] {
        if (property("refused").toBool())
            mark();
    });
}

void EntryField::mark() {
    const QString why = refusal();
    setAccessibleDescription(why);
    setToolTip(why);
    if (property("refused").toBool() == !why.isEmpty())
        return;
    setProperty("refused", !why.isEmpty());
    style()->unpolish(this);
    style()->polish(this);
}

QString NameField::refusal() const {
    return nameRefusal(text());
}

LengthField::LengthField(LengthUnit unit, Length least, Length most, QWidget* parent)
    : EntryField(parent), unit_(unit), least_(least), most_(most) {}

void LengthField::setValue(Length value) {
    set_ = value;
    setText_ = entryText(value, unit_);
    setText(setText_);
}

void LengthField::clearValue() {
    set_.reset();
    setText_.clear();
    clear();
}

std::optional<Length> LengthField::value() const {
    if (set_ && text() == setText_)
        return set_;
    return readLength(text(), unit_, least_, most_).value;
}

QString LengthField::refusal() const {
    if ((set_ && text() == setText_) || (optional_ && text().trimmed().isEmpty()))
        return {};
    return readLength(text(), unit_, least_, most_).refusal;
}

WireLengthField::WireLengthField(QWidget* parent)
    : LengthField(LengthUnit::millimetre, millimetres(limits::thinnestWire), millimetres(limits::thickestWire),
                  parent) {}

QString WireLengthField::refusal() const {
    const QString why = LengthField::refusal();
    return why.isEmpty() ? why : readWire(text()).refusal;
}

NumberField::NumberField(double least, double most, int decimals, QWidget* parent)
    : EntryField(parent), least_(least), most_(most), decimals_(decimals) {}

void NumberField::setValue(double value) {
    set_ = value;
    setText_ = entryText(value, decimals_);
    setText(setText_);
}

std::optional<double> NumberField::value() const {
    if (set_ && text() == setText_)
        return set_;
    if (!refusal().isEmpty() || text().trimmed().isEmpty())
        return std::nullopt;
    return readNumber(text(), least_, most_, decimals_).value;
}

QString NumberField::refusal() const {
    if ((set_ && text() == setText_) || (optional_ && text().trimmed().isEmpty()))
        return {};
    if (decimals_ == 0)
        return readCount(text(), static_cast<int>(least_), static_cast<int>(most_)).refusal;
    return readNumber(text(), least_, most_, decimals_).refusal;
}

QList<QPair<QString, int>> metals() {
    QList<QPair<QString, int>> all;
    for (const Metal metal : {Metal::softCopper, Metal::hardCopper, Metal::softBrass, Metal::hardBrass,
                              Metal::mildSteel, Metal::softSteel, Metal::aluminium})
        all += {metalText(metal), static_cast<int>(metal)};
    return all;
}

QStringList metalWords(const OwnTables& own) {
    QStringList words;
    for (const OwnMetal& metal : own.metals)
        words += text(metal.name);
    for (const auto& [word, metal] : metals())
        if (!words.contains(word))
            words += word;
    return words;
}

std::optional<MetalName> metalNamed(const OwnTables& own, const QString& word) {
    for (const OwnMetal& metal : own.metals)
        if (text(metal.name).trimmed().compare(word.trimmed(), Qt::CaseInsensitive) == 0)
            return MetalName{Metal::softCopper, metal.name};
    for (const auto& [name, metal] : metals())
        if (name.compare(word.trimmed(), Qt::CaseInsensitive) == 0)
            return MetalName{static_cast<Metal>(metal), {}};
    return std::nullopt;
}

QComboBox* metalChoice(const OwnTables& own, const MetalName& chosen, QWidget* parent) {
    auto* box = new QComboBox(parent);
    box->addItems(metalWords(own));
    box->setCurrentIndex(std::max(0, box->findText(metalText(chosen))));
    return box;
}

MetalName chosenMetal(const QComboBox* box, const OwnTables& own) {
    return metalNamed(own, box->currentText()).value_or(MetalName{});
}

bool agrees(Length diameter, GaugeNumber gauge) {
    const auto exact = diameterOf(gauge);
    return exact && std::abs(inMillimetres(*exact - diameter)) <= 0.01;
}

WireField::WireField(QWidget* parent)
    : QWidget(parent),
      diameter_(new WireLengthField(this)),
      system_(new QComboBox(this)),
      number_(new QComboBox(this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(look::unit);
    row->addWidget(diameter_, 3);
    row->addWidget(system_, 4);
    row->addWidget(number_, 1);
    diameter_->setMinimumWidth(84);
    // Wide enough for their words, whatever the form leaves them.
    system_->setMinimumContentsLength(10);
    number_->setMinimumContentsLength(2);
    setFocusProxy(diameter_);
    system_->setMinimumHeight(look::target);
    number_->setMinimumHeight(look::target);
    system_->addItem(tr("no number"), -1);
    for (const GaugeSystem system : {GaugeSystem::awg, GaugeSystem::swg, GaugeSystem::steel})
        system_->addItem(systemText(system), static_cast<int>(system));
    fillNumbers();
    connect(system_, &QComboBox::currentIndexChanged, this, [this] {
        fillNumbers();
        numberChosen();
    });
    connect(number_, &QComboBox::currentIndexChanged, this, &WireField::numberChosen);
    connect(diameter_, &QLineEdit::editingFinished, this, &WireField::diameterTyped);
}

void WireField::setObjectNames(const QString& name, const QString& accessible) {
    setObjectName(name);
    diameter_->setObjectName(name + QStringLiteral("Diameter"));
    system_->setObjectName(name + QStringLiteral("System"));
    number_->setObjectName(name + QStringLiteral("Number"));
    diameter_->setAccessibleName(tr("%1, diameter in millimetres").arg(accessible));
    system_->setAccessibleName(tr("%1, gauge system").arg(accessible));
    number_->setAccessibleName(tr("%1, gauge number").arg(accessible));
}

void WireField::setValue(Length diameter, const std::optional<GaugeNumber>& gauge) {
    const QSignalBlocker quietSystem(system_), quietNumber(number_);
    system_->setCurrentIndex(gauge ? system_->findData(static_cast<int>(gauge->system)) : 0);
    fillNumbers();
    if (gauge) {
        // A number beyond the tables still is the maker's note.
        if (number_->findData(gauge->number) < 0)
            number_->addItem(QString::number(gauge->number), gauge->number);
        number_->setCurrentIndex(number_->findData(gauge->number));
    }
    diameter_->setValue(diameter);
}

std::optional<Length> WireField::diameter() const {
    return diameter_->value();
}

std::optional<GaugeNumber> WireField::gauge() const {
    if (system_->currentData().toInt() < 0 || number_->currentIndex() < 0)
        return std::nullopt;
    return GaugeNumber{static_cast<GaugeSystem>(system_->currentData().toInt()),
                       number_->currentData().toInt()};
}

QString WireField::refusal() const {
    return diameter_->refusal();
}

void WireField::fillNumbers() {
    const QSignalBlocker quiet(number_);
    number_->clear();
    const int system = system_->currentData().toInt();
    // Without a system there is no number to choose.
    number_->setVisible(system >= 0);
    if (system < 0)
        return;
    for (int n = thickestGauge; n <= thinnestGauge; ++n)
        number_->addItem(QString::number(n), n);
    // The one nearest to the wire that stands there, so that choosing a system alone changes little.
    if (const auto now = diameter_->value())
        number_->setCurrentIndex(
            number_->findData(nearestGauge(*now, static_cast<GaugeSystem>(system)).gauge.number));
}

void WireField::numberChosen() {
    const auto number = gauge();
    if (!number)
        return;
    if (const auto exact = diameterOf(*number))
        diameter_->setValue(millimetres(std::round(inMillimetres(*exact) * 1000) / 1000));
    diameter_->mark();
}

void WireField::diameterTyped() {
    // "AWG 28" says it all: the number is chosen, and the millimetres follow.
    static const QRegularExpression letters(QStringLiteral("awg|swg|steel"),
                                            QRegularExpression::CaseInsensitiveOption);
    if (diameter_->text().contains(letters))
        if (const auto read = readGauge(diameter_->text(), GaugeSystem::awg); read.value && *read.value)
            return setValue(millimetres(std::round(inMillimetres(*diameterOf(**read.value)) * 1000) / 1000),
                            *read.value);
    const auto now = diameter_->value();
    if (const auto number = gauge(); now && number && !agrees(*now, *number)) {
        const QSignalBlocker quiet(system_);
        system_->setCurrentIndex(0);
        fillNumbers();
    }
}

} // namespace stemwright
