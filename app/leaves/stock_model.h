#pragma once

#include "app/leaves/leaf_pictures.h"
#include "app/leaves/table_model.h"

namespace stemwright {

/// The stock of one kind: a line for each of its mixes, from tip to base.
class StockModel : public TableModel {
    Q_OBJECT
public:
    struct Field {
        enum { mixName, made, toMake, onStems, inTray };
    };
    explicit StockModel(Session& session, QObject* parent = nullptr);

    void setKind(KindId kind);
    KindId kind() const { return kind_; }
    MixId mix(int line) const { return MixId{key(line)}; }

    /// The mixes that the kind has no line for.
    std::vector<MixId> missing() const;
    bool addLine(MixId mix);
    /// Rows that begin with a mix, by name or code, followed by what is made and what is to make: sets the
    /// lines of these mixes, wherever they stand, and adds those that are missing.
    bool pasteByMix(const QList<QStringList>& cells);

    int fields() const override { return 5; }
    QString fieldName(int field) const override;
    QString lineName(int line) const override;
    bool editable(int line, int field) const override;
    std::optional<QString> emptied(int field) const override;

protected:
    std::vector<std::uint32_t> keysOf(const Plan& plan) const override;
    QString shown(int line, int field) const override;
    QString typed(int line, int field) const override;
    QVariant more(int line, int field, int role) const override;
    QString write(Plan& draft, int line, int field, const QString& text) const override;
    QString addTo(Plan& draft) const override;
    std::optional<Edit> removal(const QList<int>& lines, QString& why) const override;
    std::optional<Edit> moving(int line, int to) const override;
    Deed deed() const override { return Deed::changeStock; }

private:
    const Kind* shownKind() const;
    /// Where the line stands, and how many of it are on stems.
    int placedOf(int line) const;
    QString writeCount(Plan& draft, StockLine& line, int field, const QString& text) const;

    KindId kind_;
    mutable LeafPictures pictures_;
};

} // namespace stemwright
