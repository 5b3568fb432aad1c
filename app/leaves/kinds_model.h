#pragma once

#include "app/leaves/table_model.h"

namespace stemwright {

/// The plan's kinds as a sheet of properties: a column for each kind, a row for each thing known of it.
class KindsModel : public TableModel {
    Q_OBJECT
public:
    struct Field {
        enum {
            name,
            beads,
            beadSize,
            length,
            width,
            tipEnd,
            baseEnd,
            wire,
            wireDiameter,
            gauge,
            metal,
            wiresAtBase,
            angle,
            minutes,
            fieldCount
        };
    };
    explicit KindsModel(Session& session, QObject* parent = nullptr);

    KindId kind(int line) const { return KindId{key(line)}; }

    int fields() const override { return Field::fieldCount; }
    QString fieldName(int field) const override;
    QString lineName(int line) const override;
    QStringList choices(int line, int field) const override;
    std::optional<QString> emptied(int field) const override;
    bool transposed() const override { return true; }

protected:
    std::vector<std::uint32_t> keysOf(const Plan& plan) const override;
    QString shown(int line, int field) const override;
    QString typed(int line, int field) const override;
    QVariant more(int line, int field, int role) const override;
    QString write(Plan& draft, int line, int field, const QString& text) const override;
    QString addTo(Plan& draft) const override;
    std::optional<Edit> removal(const QList<int>& lines, QString& why) const override;
    std::optional<Edit> moving(int line, int to) const override;
};

} // namespace stemwright
