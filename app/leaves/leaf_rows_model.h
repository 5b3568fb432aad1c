#pragma once

#include "app/leaves/row_lines.h"
#include "app/leaves/table_model.h"

namespace stemwright {

/// The rows of one leaf from the outer one inward, with their beads by colour of a mix, and their sum. What she
/// counted on a real leaf stands in place of what the pattern says; emptied, it is the pattern's again.
class LeafRowsModel : public TableModel {
    Q_OBJECT
public:
    struct Field {
        enum { beads, whose, firstColour };
    };
    explicit LeafRowsModel(Session& session, QObject* parent = nullptr);

    void setLeaf(Leaf leaf);
    /// Whether any of its figures is hers and can be given back.
    bool anyHers() const;
    /// Gives all of the kind's own counts and measures back to its pattern.
    bool giveBack();
    /// Where the line lies in the drawing.
    const RowLine* row(int line) const;

    int fields() const override;
    QString fieldName(int field) const override;
    QString lineName(int line) const override;
    bool editable(int line, int field) const override;
    std::optional<QString> emptied(int field) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

protected:
    std::vector<std::uint32_t> keysOf(const Plan& plan) const override;
    QString shown(int line, int field) const override;
    QString typed(int line, int field) const override;
    QVariant more(int line, int field, int role) const override;
    QString write(Plan& draft, int line, int field, const QString& text) const override;
    QString addTo(Plan& draft) const override;
    std::optional<Edit> removal(const QList<int>& lines, QString& why) const override;
    std::optional<Edit> moving(int line, int to) const override;

private:
    const Kind* shownKind() const { return find(plan(), leaf_.kind); }
    const Mix* shownMix() const { return find(plan(), leaf_.mix); }
    bool hers(int line) const;
    /// The last line is the sum.
    bool sum(int line) const { return line == static_cast<int>(rows_.size()); }

    Leaf leaf_;
    mutable std::vector<RowLine> rows_; ///< of what is shown, made anew with the keys
};

} // namespace stemwright
