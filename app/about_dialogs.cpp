#include "app/about_dialogs.h"

#include "app/cautions.h"
#include "app/look.h"
#include "app/wording.h"

#include <QCheckBox>
#include <QDateEdit>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTextBrowser>
#include <QVBoxLayout>

namespace stemwright {

namespace {

/// A page of text to read, closed by Esc or Enter.
void showPage(QWidget* parent, const char* name, const QString& title, const QString& html) {
    QDialog dialog(parent);
    dialog.setObjectName(QLatin1String(name));
    dialog.setWindowTitle(title);
    auto* page = new QTextBrowser(&dialog);
    page->setObjectName(QStringLiteral("page"));
    page->setHtml(html);
    page->setFrameShape(QFrame::NoFrame);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, &dialog);
    QObject::connect(buttons, &QDialogButtonBox::rejected, &dialog, &QDialog::reject);
    auto* layout = new QVBoxLayout(&dialog);
    layout->addWidget(page);
    layout->addWidget(buttons);
    dialog.resize(620, 560);
    buttons->button(QDialogButtonBox::Close)->setFocus();
    dialog.exec();
}

} // namespace

AboutPlanDialog::AboutPlanDialog(const About& about, QWidget* parent)
    : QDialog(parent),
      before_(about),
      title_(new QLineEdit(text(about.title), this)),
      dated_(new QCheckBox(tr("&Dated"), this)),
      date_(new QDateEdit(this)),
      note_(new QPlainTextEdit(text(about.note), this)) {
    setObjectName(QStringLiteral("aboutPlan"));
    setWindowTitle(tr("Title, date and note"));
    title_->setObjectName(QStringLiteral("title"));
    title_->setMaxLength(300);
    dated_->setObjectName(QStringLiteral("dated"));
    date_->setObjectName(QStringLiteral("date"));
    date_->setDisplayFormat(QStringLiteral("yyyy-MM-dd"));
    date_->setCalendarPopup(true);
    const QDate given = QDate::fromString(text(about.date), Qt::ISODate);
    dated_->setChecked(given.isValid());
    date_->setDate(given.isValid() ? given : QDate::currentDate());
    date_->setEnabled(given.isValid());
    connect(dated_, &QCheckBox::toggled, date_, &QWidget::setEnabled);
    note_->setObjectName(QStringLiteral("note"));
    note_->setTabChangesFocus(true);
    note_->setMinimumHeight(90);

    auto* dateRow = new QHBoxLayout;
    dateRow->addWidget(dated_);
    dateRow->addWidget(date_, 1);
    auto* form = new QFormLayout;
    form->addRow(tr("&Title"), title_);
    form->addRow(tr("Date"), dateRow);
    form->addRow(tr("&Note"), note_);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* layout = new QVBoxLayout(this);
    layout->addLayout(form);
    layout->addWidget(buttons);
    resize(460, 260);
}

About AboutPlanDialog::about() const {
    About about = before_;
    about.title = title_->text().toStdString();
    about.date = dated_->isChecked() ? date_->date().toString(Qt::ISODate).toStdString() : std::string();
    about.note = note_->toPlainText().toStdString();
    return about;
}

void showKeys(QWidget* parent) {
    const std::pair<QString, QString> keys[] = {
        {AboutPlanDialog::tr("Arrows"),
         AboutPlanDialog::tr("go from leaf to leaf, to the next stem, to the tray")},
        {AboutPlanDialog::tr("Space or Enter"),
         AboutPlanDialog::tr("pick up what is chosen; again: put it down here")},
        {AboutPlanDialog::tr("Esc"), AboutPlanDialog::tr("let go; nothing has changed")},
        {AboutPlanDialog::tr("Ctrl+arrows"),
         AboutPlanDialog::tr("move the leaf a tier up or down, or to the next stem")},
        {AboutPlanDialog::tr("Shift+arrows"), AboutPlanDialog::tr("choose several leaves")},
        {AboutPlanDialog::tr("Ctrl+A"), AboutPlanDialog::tr("choose the whole stem")},
        {AboutPlanDialog::tr("Delete"), AboutPlanDialog::tr("return to the tray")},
        {AboutPlanDialog::tr("Insert"), AboutPlanDialog::tr("open a tier")},
        {AboutPlanDialog::tr("T, P"), AboutPlanDialog::tr("turn the tier; pin or unpin")},
        {AboutPlanDialog::tr("Home, End, Page Up, Page Down"),
         AboutPlanDialog::tr("tip, base, and a screen further")},
        {AboutPlanDialog::tr("Shift+Insert, Ctrl+Delete"),
         AboutPlanDialog::tr("open a tier below; remove the tier")},
        {AboutPlanDialog::tr("Ctrl+Insert, Ctrl+D, F2"),
         AboutPlanDialog::tr("add a stem, copy it, its settings")},
        {AboutPlanDialog::tr("Ctrl+Shift+Left, Right"), AboutPlanDialog::tr("move the stem")},
        {AboutPlanDialog::tr("F6, Shift+F6, F7, F8, F9"),
         AboutPlanDialog::tr(
             "spread the colours, in matched pairs, order tip to base, shuffle, place in the pot")},
        {AboutPlanDialog::tr("Ctrl+Enter, Ctrl+Backspace"),
         AboutPlanDialog::tr("take, or drop, what is suggested")},
        {AboutPlanDialog::tr("F4"), AboutPlanDialog::tr("mix codes on the leaves")},
        {AboutPlanDialog::tr("Menu key"), AboutPlanDialog::tr("all that can be done here")},
        {AboutPlanDialog::tr("Ctrl+1, 2, 3, 4, 5"), AboutPlanDialog::tr("Leaves, Board, Pot, Bind, Sheets")},
        {AboutPlanDialog::tr("Ctrl+Z, Ctrl+Shift+Z"), AboutPlanDialog::tr("undo, redo")},
        {AboutPlanDialog::tr("Ctrl++, Ctrl+−, Ctrl+0"),
         AboutPlanDialog::tr("nearer, farther, as it was; Ctrl+9: the whole board")},
    };
    QString html = QStringLiteral("<table cellpadding=5>");
    for (const auto& [key, what] : keys)
        html += QStringLiteral("<tr><td><b>%1</b></td><td>%2</td></tr>")
                    .arg(key.toHtmlEscaped(), what.toHtmlEscaped());
    html += QStringLiteral("</table><p>%1</p>")
                .arg(AboutPlanDialog::tr(
                         "With the mouse: drag a leaf, the stem between two leaves for a whole tier, or "
                         "what is chosen (Ctrl, Shift, or a box drawn on the paper), onto a leaf to "
                         "swap, an empty place, a gap, the tray or another stem.")
                         .toHtmlEscaped());
    showPage(parent, "keysPage", AboutPlanDialog::tr("Keys"), html);
}

void showCautions(QWidget* parent) {
    QString html = QStringLiteral("<p>%1</p><ul>").arg(cautionPreface().toHtmlEscaped());
    for (const QString& caution : cautionTexts())
        html += QStringLiteral("<li>%1</li>").arg(caution.toHtmlEscaped());
    showPage(parent, "cautionsPage", AboutPlanDialog::tr("Cautions"), html + QStringLiteral("</ul>"));
}

void showAbout(QWidget* parent) {
    showPage(
        parent, "aboutPage", AboutPlanDialog::tr("About Stemwright"),
        QStringLiteral("<h3>Stemwright %1</h3><p>%2</p><p>%3</p>")
            .arg(QStringLiteral(STEMWRIGHT_VERSION),
                 AboutPlanDialog::tr("A layout board for makers of beaded plants.").toHtmlEscaped(),
                 AboutPlanDialog::tr("Free software under the MIT licence, without any warranty. Built with Qt "
                                     "and nlohmann/json.")
                     .toHtmlEscaped()));
}

} // namespace stemwright
