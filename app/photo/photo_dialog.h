#pragma once

#include "app/fields/form_dialog.h"
#include "app/photo/photo_view.h"
#include "core/plan/edit.h"

#include <QFutureWatcher>

#include <optional>

class QListWidget;
class QProgressBar;
class QPushButton;
class QSpinBox;

namespace stemwright {

/// Takes colours from a photograph of the maker's own beads, as new colours of the plan or in place of one that
/// is there. Nothing of the photograph is kept.
class PhotoDialog : public FormDialog {
    Q_OBJECT
public:
    /// `colour` is the one that stands to be changed, 0 for none.
    PhotoDialog(const Plan& plan, ColourId colour, QWidget* parent = nullptr);
    ~PhotoDialog() override;

    /// Reads the file beside the window's thread; a bad one is said in one sentence, and what was shown stays.
    void load(const QString& path);
    bool loading() const { return reading_.isRunning(); }
    /// The colours that were taken, as one edit; nothing where none was.
    std::optional<Edit> edit() const;

protected:
    QString problem() override;
    void keyPressEvent(QKeyEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    void buildSide(QVBoxLayout* side);
    void ask();
    void pasteImage();
    void showPhoto(const Photo& photo);
    void stopReading();
    void refresh();
    void take();
    void removeTaken();

    const Plan& plan_;
    PhotoView* view_;
    QFutureWatcher<Photo> reading_;
    bool stopped_ = false;
    QPushButton* open_ = nullptr;
    QProgressBar* progress_ = nullptr;
    QPushButton* stop_ = nullptr;
    QSpinBox* across_ = nullptr;
    QLabel* swatch_ = nullptr;
    QLabel* value_ = nullptr;
    QComboBox* use_ = nullptr;
    QPushButton* take_ = nullptr;
    QListWidget* taken_ = nullptr;
    QPushButton* remove_ = nullptr;
};

} // namespace stemwright
