#pragma once

#include "app/session.h"
#include "core/plan/edit.h"

#include <QAbstractTableModel>
#include <QList>
#include <QStringList>

#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

namespace stemwright {

/// A table over one list of the plan: a line for each part, a field for each thing that is known of it. Lines
/// are rows, or columns where it is transposed. Every change is made on a draft of the plan first and becomes
/// one edit, or one sentence that names the cell and says why not.
class TableModel : public QAbstractTableModel {
    Q_OBJECT
public:
    explicit TableModel(Session& session, QObject* parent = nullptr);

    virtual int fields() const = 0;
    virtual QString fieldName(int field) const = 0;
    virtual QString lineName(int line) const = 0;
    virtual bool editable(int line, int field) const;
    /// What may be chosen in a cell; empty where it is typed.
    virtual QStringList choices(int line, int field) const;
    /// What the cell becomes when it is emptied; nothing where it cannot be.
    virtual std::optional<QString> emptied(int field) const;
    virtual bool transposed() const { return false; }

    int lines() const { return static_cast<int>(keys_.size()); }
    int lineOf(const QModelIndex& index) const;
    int fieldOf(const QModelIndex& index) const;
    QModelIndex at(int line, int field) const;
    /// Names a line for as long as its part is there.
    std::uint32_t key(int line) const;
    int lineOfKey(std::uint32_t key) const; ///< −1 where it is gone

    /// Why the cell cannot become this; empty where it can.
    QString refusal(const QModelIndex& index, const QString& typed) const;
    /// The fields that a row of names stands for, column by column, such as a spreadsheet has above its lines;
    /// nothing where the row is no such row. −1 for a name of none of the fields.
    std::optional<std::vector<int>> headerFields(const QStringList& row) const;
    /// Sets the cells from there on, adding lines where the list can grow: all of them as one edit, or none. A
    /// row of field names above them (a column before them, where it is transposed) says what stands where.
    bool paste(const QModelIndex& from, const QList<QStringList>& cells);
    /// Sets each of the cells to the one text, as one edit.
    bool fill(const QModelIndexList& cells, const QString& typed);
    bool clear(const QModelIndexList& cells);
    /// The new line's number; −1 where there can be none.
    int add();
    bool remove(const QList<int>& lines);
    bool move(int line, int to);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;

Q_SIGNALS:
    /// One sentence for the maker.
    void refused(const QString& sentence);
    /// A change was made: what was said before holds no longer.
    void accepted();
    /// What was done besides what she asked for, in one sentence.
    void noted(const QString& sentence);

protected:
    virtual std::vector<std::uint32_t> keysOf(const Plan& plan) const = 0;
    /// The cell as it is shown and as it is edited and copied.
    virtual QString shown(int line, int field) const = 0;
    virtual QString typed(int line, int field) const { return shown(line, field); }
    /// Pictures, alignment and such.
    virtual QVariant more(int line, int field, int role) const;
    /// Writes into the draft; the reason why not otherwise, and then the draft is of no use any more.
    virtual QString write(Plan& draft, int line, int field, const QString& text) const = 0;
    virtual QString addTo(Plan& draft) const = 0;
    /// What no single cell can see; empty where the draft is well.
    virtual QString verify(const Plan& draft) const;
    /// Removes the lines; a reason why not otherwise.
    virtual std::optional<Edit> removal(const QList<int>& lines, QString& why) const = 0;
    virtual std::optional<Edit> moving(int line, int to) const = 0;
    virtual Deed deed() const { return Deed::paste; }

    const Plan& plan() const;
    const Session& session() const { return session_; }
    /// For models that show a part of another list: what they show has changed.
    void refresh();
    bool commit(const Plan& draft, Deed deed);
    bool make(const Edit& edit);

private:
    bool unknownField(const QString& name);
    bool pasteCells(const QModelIndex& from, const QList<QStringList>& cells, const std::vector<int>& fieldOf);
    QString at(int line, int field, const QString& why) const;
    QString whyNot(const Edit& edit) const;

    Session& session_;
    std::vector<std::uint32_t> keys_;
};

} // namespace stemwright
