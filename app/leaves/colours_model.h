#pragma once

#include "app/leaves/parts_model.h"

#include <QColor>

namespace stemwright {

/// The plan's colours: name, value, and how many beads of each the stock takes.
class ColoursModel : public PartsModel<Colour, &Plan::colours> {
    Q_OBJECT
public:
    struct Field {
        enum { name, value, beads };
    };
    explicit ColoursModel(Session& session, QObject* parent = nullptr);

    ColourId colour(int line) const { return id(line); }
    QColor shade(int line) const;

    int fields() const override { return 3; }
    QString fieldName(int field) const override;
    bool editable(int line, int field) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;

protected:
    QString shown(int line, int field) const override;
    QVariant more(int line, int field, int role) const override;
    QString write(Plan& draft, int line, int field, const QString& text) const override;
    QString addTo(Plan& draft) const override;
    Deed deed() const override { return Deed::several; }
};

} // namespace stemwright
