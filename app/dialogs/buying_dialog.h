#pragma once

#include "app/fields/form_dialog.h"
#include "core/plan/edit.h"

#include <optional>
#include <utility>
#include <vector>

class QComboBox;
class QGridLayout;
class QPushButton;

namespace stemwright {

/// How things are sold and what they cost: the spare, the packs of beads, wire, thread, clay and cover, and the
/// straight lengths that stake and core wire is to be had in.
class BuyingDialog : public FormDialog {
    Q_OBJECT
public:
    explicit BuyingDialog(const Plan& plan, QWidget* parent = nullptr);

    /// What the fields say, as one edit; nothing where they say what the plan says.
    std::optional<Edit> edit() const;

protected:
    QString problem() override;

private:
    /// One line: how much is sold in one, and for how much. One of the amounts is there.
    struct PackRow {
        QString what;
        LengthField* length = nullptr;
        NumberField* mass = nullptr;
        NumberField* price = nullptr;
    };
    struct BarRow {
        Bar before;
        LengthField* length;
        QComboBox* wire;
        NumberField* price;
        QPushButton* remove;

        std::vector<QWidget*> widgets() const;
    };

    NumberField* priceField(double price, const QString& name, const QString& accessible);
    PackRow addMass(QGridLayout* grid, const QString& what, const QString& name, const Pack& pack,
                    const QString& unsaid);
    PackRow addLength(const QString& what, const QString& name, std::optional<Length> length, double price,
                      const QString& unsaid);
    void addLeafWires();
    /// The diameters of stakes, cores and bars, the thinnest first.
    std::vector<Length> barWires() const;
    void addBar(const Bar& bar);
    /// The diameter that a line is for; 0 for wire of any.
    static Length wireOf(const BarRow& row);
    void removeBar(const QPushButton* button);
    void nameBars();
    Pack massPack(const PackRow& row, const Pack& before) const;
    Pack lengthPack(const PackRow& row, const Pack& before) const;
    double priceOf(const NumberField* field) const;
    Buying buying() const;
    Binding binding() const;

    Plan plan_;
    NumberField* spare_;
    QGridLayout* packs_;
    PackRow beads_, leafWire_, clay_, cover_;
    std::vector<PackRow> wraps_;
    std::vector<std::pair<LeafWirePack, PackRow>> leafWires_;
    std::vector<PackRow> colours_; ///< in the plan's order
    QGridLayout* bars_;
    QGridLayout* byColour_;
    std::vector<BarRow> barRows_;
    QPushButton* addBar_;
};

} // namespace stemwright
