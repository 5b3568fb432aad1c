#pragma once

#include "app/sheet_painter.h"
#include "core/document/sheet.h"

#include <QFutureWatcher>
#include <QTimer>
#include <QWidget>

#include <atomic>
#include <functional>
#include <memory>
#include <utility>
#include <vector>

class QCheckBox;
class QComboBox;
class QLabel;
class QListWidget;
class QProgressBar;
class QPushButton;

namespace stemwright {

class Session;
class SheetsPreview;
struct SheetSet;

/// The place Sheets: which paper, which pages and which stems at the left, the paper itself beside it, and the
/// ways to have it: PDF, SVG, printer. Follows the plan while it can be seen.
class SheetsPlace : public QWidget {
    Q_OBJECT
public:
    explicit SheetsPlace(Session& session, QWidget* parent = nullptr);
    ~SheetsPlace() override;

    /// What is chosen at the left.
    SheetOptions options() const;
    /// Asks for a folder; a test answers in its stead.
    std::function<QString(QWidget*, const QString&)> pickFolder;

public Q_SLOTS:
    void savePdf();
    void saveSvg();
    void print();

Q_SIGNALS:
    /// What was done, or why not: a sentence for the status line.
    void said(const QString& sentence);

protected:
    void showEvent(QShowEvent* event) override;

private:
    void buildChoices(QWidget* column);
    void fillStems();
    void later();
    void layOut();
    void tellPages();
    void tell(const QString& sentence, bool refusal);
    QString suggested(const QString& suffix) const;
    /// Writes away from the window's thread; the sentence is what to say when it went well.
    void write(std::function<bool(QString*, const PageTold&)> work, const QString& sentence);
    void showWriting(bool on);

    Session& session_;
    SheetsPreview* preview_ = nullptr;
    QComboBox* paper_ = nullptr;
    std::vector<std::pair<SheetPage, QCheckBox*>> pages_;
    QCheckBox* grey_ = nullptr;
    QListWidget* stems_ = nullptr;
    QLabel* count_ = nullptr;
    QLabel* missing_ = nullptr;
    QLabel* notice_ = nullptr;
    std::vector<QPushButton*> ways_;
    QTimer wait_;
    bool stale_ = true;
    bool again_ = false;
    QFutureWatcher<std::shared_ptr<const SheetSet>> layingOut_;
    struct Written {
        bool ok = false;
        QString sentence;
    };
    QFutureWatcher<Written> writing_;
    /// Shared with the thread that writes, which may outlive a click.
    std::shared_ptr<std::atomic_bool> stop_;
    QProgressBar* progress_ = nullptr;
    QPushButton* stopButton_ = nullptr;
};

} // namespace stemwright
