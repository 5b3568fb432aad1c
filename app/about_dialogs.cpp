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
    // The page has the keys, so that they scroll it at once; Enter and Esc close it all the same.
    buttons->button(QDialogButtonBox::Close)->setDefault(true);
    page->setFocus();
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
    struct Part {
        QString where;
        QVector<std::pair<QString, QString>> keys;
    };
    const auto say = [](const char* words) { return AboutPlanDialog::tr(words); };
    const Part parts[] = {
        {say("Everywhere"),
         {{say("Ctrl+1, 2, 3, 4, 5"), say("Leaves, Board, Pot, Bind, Sheets")},
          {say("Ctrl+Z, Ctrl+Shift+Z"), say("undo, redo")},
          {say("Tab, Shift+Tab"), say("on to the next, back to the last that can be used")},
          {say("Alt and an underlined letter"), say("press or open it")},
          {say("F6, Shift+F6, F7, F8, F9"),
           say("spread the colours, in matched pairs, order tip to base, shuffle, place in the pot")},
          {say("Shift+F7, Ctrl+F6, Shift+F8"), say("vary the heights, start me off, compare side by side")},
          {say("Ctrl+Enter, Ctrl+Backspace"), say("take, or drop, what is suggested")},
          {say("F1, Shift+F1"), say("these keys; how a figure is reckoned")},
          {say("Ctrl++, Ctrl+−, Ctrl+0"), say("nearer, farther, as it was: the board or the paper")}}},
        {say("Board"),
         {{say("Arrows"), say("go from leaf to leaf, to the next stem, to the tray")},
          {say("Space or Enter"), say("pick up what is chosen; again: put it down here")},
          {say("Shift+Space"), say("pick up the whole tier")},
          {say("Esc"), say("let go; nothing has changed")},
          {say("Ctrl+arrows"), say("move the leaf a tier up or down, or to the next stem")},
          {say("Shift+arrows, Ctrl+A"), say("choose several leaves, the whole stem")},
          {say("Home, End, Page Up, Page Down"), say("tip, base, and a screen further")},
          {say("Delete"), say("return to the tray")},
          {say("T, P"), say("turn the tier; pin or unpin")},
          {say("Insert, Shift+Insert, Ctrl+Delete"), say("open a tier above, below; remove the tier")},
          {say("Ctrl+Insert, Ctrl+D, F2"), say("add a stem, copy it, its settings")},
          {say("Ctrl+Shift+Left, Right"), say("move the stem")},
          {say("Alt+R"), say("show the remedy of the finding that is chosen")},
          {say("Menu key, F4, Ctrl+9"),
           say("all that can be done here; mix codes on the leaves; the whole board")}}},
        {say("Leaves"),
         {{say("Enter or F2"), say("write in the cell; Tab goes on to the next one")},
          {say("Ctrl+Tab, Ctrl+Shift+Tab"), say("to the next table, to the one before")},
          {say("Insert, Ctrl+Delete"), say("add a line, remove it")},
          {say("Alt+arrows"), say("move the line")},
          {say("Ctrl+C, Ctrl+V"), say("copy and paste cells, as in a spreadsheet")}}},
        {say("Pot"),
         {{say("Left, Right, Up, Down"),
           say("turn and tilt the plant; Home: as it was; + and −: nearer, farther")},
          {say("Ctrl+arrows, Ctrl+Shift+arrows"), say("lean the chosen stem, bend it")},
          {say("In the pot from above: arrows"), say("choose a stem")},
          {say("Space, then arrows, then Enter"),
           say("pick the stem up, move it by 1 mm, with Shift by 5 mm, put it down; Esc puts it back")}}},
        {say("Bind"),
         {{say("Space or Page Down"), say("this step is done, go on; a foot pedal sends Page Down")},
          {say("Backspace or Page Up"), say("back by a step")},
          {say("Alt+L, Alt+I"), say("turn the picture as the stem is held; time each tier")},
          {say("Alt+W, Esc"), say("the whole screen, and out of it")}}},
        {say("Sheets"),
         {{say("Page Down, Page Up, Home, End"), say("turn the pages")},
          {say("+, −, 0, 1"), say("larger, smaller, as wide as the window, true size")},
          {say("Alt+D, Alt+G, Alt+R"), say("save as PDF, as SVG, print")}}},
    };
    QString html = QStringLiteral("<table cellpadding=4>");
    for (const Part& part : parts) {
        html += QStringLiteral("<tr><td colspan=2><h3>%1</h3></td></tr>").arg(part.where.toHtmlEscaped());
        for (const auto& [key, what] : part.keys)
            html += QStringLiteral("<tr><td><b>%1</b></td><td>%2</td></tr>")
                        .arg(key.toHtmlEscaped(), what.toHtmlEscaped());
    }
    html +=
        QStringLiteral("</table><p>%1</p>")
            .arg(say("With the mouse: drag a leaf, the stem between two leaves for a whole tier, or what is "
                     "chosen (Ctrl, Shift, or a box drawn on the paper), onto a leaf to swap, an empty place, "
                     "a gap, the tray or another stem.")
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
