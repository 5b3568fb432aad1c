#pragma once

#include <QLabel>
#include <QStringList>

namespace stemwright {

/// A line that takes the room it is given: it shows the first of its wordings that fits, and where none does
/// the last one with an ellipsis. The first is its tool tip and what is read out.
class FittedLabel : public QLabel {
    Q_OBJECT
public:
    explicit FittedLabel(QWidget* parent = nullptr);

    /// The longest first; the longest wording is shown where there is room.
    void setWordings(const QStringList& wordings);
    QString whole() const { return wordings_.value(0); }

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void fit();

    QStringList wordings_;
};

} // namespace stemwright
