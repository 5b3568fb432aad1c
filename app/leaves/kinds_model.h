#pragma once

#include "app/leaves/parts_model.h"

namespace stemwright {

/// The plan's kinds as a sheet of properties: a column for each kind, a row for each thing known of it.
class KindsModel : public PartsModel<Kind, &Plan::kinds> {
    Q_OBJECT
public:
    struct Field {
        enum {
            name,
            making,
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
            mass,
            fieldCount
        };
    };
    explicit KindsModel(Session& session, QObject* parent = nullptr);

    KindId kind(int line) const { return id(line); }

    int fields() const override { return Field::fieldCount; }
    QString fieldName(int field) const override;
    bool editable(int line, int field) const override;
    QStringList choices(int line, int field) const override;
    std::optional<QString> emptied(int field) const override;
    bool transposed() const override { return true; }

protected:
    QString shown(int line, int field) const override;
    QString typed(int line, int field) const override;
    QVariant more(int line, int field, int role) const override;
    QString write(Plan& draft, int line, int field, const QString& text) const override;
    QString addTo(Plan& draft) const override;

private:
    /// A measure of her own over that of the kind's pattern.
    bool hers(int line, int field) const;
};

} // namespace stemwright
