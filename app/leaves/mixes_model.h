#pragma once

#include "app/leaves/leaf_pictures.h"
#include "app/leaves/parts_model.h"

namespace stemwright {

/// The plan's mixes: code, name and colours.
class MixesModel : public PartsModel<Mix, &Plan::mixes> {
    Q_OBJECT
public:
    struct Field {
        enum { code, name, colours };
    };
    explicit MixesModel(Session& session, QObject* parent = nullptr);

    MixId mix(int line) const { return id(line); }
    /// The kind in whose shape the mixes are shown.
    void setKind(KindId kind);

    int fields() const override { return 3; }
    QString fieldName(int field) const override;

protected:
    QString shown(int line, int field) const override;
    QVariant more(int line, int field, int role) const override;
    QString write(Plan& draft, int line, int field, const QString& text) const override;
    QString verify(const Plan& draft) const override;
    QString addTo(Plan& draft) const override;
    std::optional<Edit> removal(const QList<int>& lines, QString& why) const override;

private:
    KindId kind_;
    mutable LeafPictures pictures_;
};

/// The colours of one mix from the outer row inward, with their shares.
class MixColoursModel : public TableModel {
    Q_OBJECT
public:
    struct Field {
        enum { colour, share, part };
    };
    explicit MixColoursModel(Session& session, QObject* parent = nullptr);

    void setMix(MixId mix);
    MixId mix() const { return mix_; }

    int fields() const override { return 3; }
    QString fieldName(int field) const override;
    QString lineName(int line) const override;
    bool editable(int line, int field) const override;
    QStringList choices(int line, int field) const override;

protected:
    std::vector<std::uint32_t> keysOf(const Plan& plan) const override;
    QString shown(int line, int field) const override;
    QVariant more(int line, int field, int role) const override;
    QString write(Plan& draft, int line, int field, const QString& text) const override;
    QString addTo(Plan& draft) const override;
    std::optional<Edit> removal(const QList<int>& lines, QString& why) const override;
    std::optional<Edit> moving(int line, int to) const override;

private:
    const Mix* shownMix() const;
    static Mix* mixIn(Plan& plan, MixId id);

    MixId mix_;
};

} // namespace stemwright
