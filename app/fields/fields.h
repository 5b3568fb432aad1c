#pragma once

#include "app/fields/entry.h"
#include "core/plan/lookup.h"
#include "core/plan/plan.h"

#include <QLineEdit>
#include <QWidget>

class QComboBox;
class QLabel;

namespace stemwright {

/// A field that knows whether what stands in it can be used. It is marked when it cannot, once the maker has
/// left it.
class EntryField : public QLineEdit {
    Q_OBJECT
public:
    explicit EntryField(QWidget* parent = nullptr);
    /// Empty where the text can be used.
    virtual QString refusal() const = 0;
    /// Shows by colour and by accessible description what refusal() says.
    void mark();
};

/// A name; at most as long as plans hold.
class NameField : public EntryField {
    Q_OBJECT
public:
    using EntryField::EntryField;
    QString refusal() const override;
};

/// A length in the plan's units: "6 1/4 in", "6,5 mm", or a bare number.
class LengthField : public EntryField {
    Q_OBJECT
public:
    LengthField(LengthUnit unit, Length least, Length most, QWidget* parent = nullptr);
    void setValue(Length value);
    /// An empty text is no length, and fits.
    void setOptional(bool on) { optional_ = on; }
    void clearValue();
    /// What was set, to the last bit, as long as the text is what was set; what is typed after that.
    std::optional<Length> value() const;
    QString refusal() const override;

private:
    LengthUnit unit_;
    Length least_, most_;
    bool optional_ = false;
    std::optional<Length> set_;
    QString setText_;
};

/// The thickness of a wire; what can only be a gauge number is refused with what was probably meant.
class WireLengthField : public LengthField {
    Q_OBJECT
public:
    explicit WireLengthField(QWidget* parent = nullptr);
    QString refusal() const override;
};

/// A number without unit; whole where it has no decimals.
class NumberField : public EntryField {
    Q_OBJECT
public:
    NumberField(double least, double most, int decimals, QWidget* parent = nullptr);
    void setValue(double value);
    /// An empty text is no number, and fits.
    void setOptional(bool on) { optional_ = on; }
    std::optional<double> value() const;
    QString refusal() const override;

private:
    double least_, most_;
    int decimals_;
    bool optional_ = false;
    std::optional<double> set_;
    QString setText_;
};

/// A wire's thickness: always in millimetres, with the number it is sold by in one of the systems. Choosing a
/// number sets the millimetres; other millimetres drop the number.
class WireField : public QWidget {
    Q_OBJECT
public:
    explicit WireField(QWidget* parent = nullptr);
    void setValue(Length diameter, const std::optional<GaugeNumber>& gauge);
    std::optional<Length> diameter() const;
    std::optional<GaugeNumber> gauge() const;
    QString refusal() const;
    LengthField* field() const { return diameter_; }
    /// The names of its parts begin with the name of the whole.
    void setObjectNames(const QString& name, const QString& accessible);

private:
    void fillNumbers();
    void numberChosen();
    void diameterTyped();

    LengthField* diameter_;
    QComboBox* system_;
    QComboBox* number_;
};

/// The metals of the handbook by their words, for choices.
QList<QPair<QString, int>> metals();
/// The plan's own metals by their names, then the handbook's.
QStringList metalWords(const OwnTables& own);
/// The metal of that name, hers before the handbook's, in either case; nothing where neither has it.
std::optional<MetalName> metalNamed(const OwnTables& own, const QString& word);

/// A choice of metals, hers first, set to one of them.
QComboBox* metalChoice(const OwnTables& own, const MetalName& chosen, QWidget* parent);
MetalName chosenMetal(const QComboBox* box, const OwnTables& own);

/// A wire keeps the number it was bought by as long as its diameter is, to a hundredth of a millimetre, that of
/// the number.
bool agrees(Length diameter, GaugeNumber gauge);

} // namespace stemwright
