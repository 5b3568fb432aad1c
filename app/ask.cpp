#include "app/ask.h"

#include <QCoreApplication>
#include <QFileDialog>
#include <QFileInfo>
#include <QImageReader>
#include <QMessageBox>
#include <QPushButton>

#include <initializer_list>
#include <utility>
#include <vector>

namespace stemwright::ask {

namespace {

std::optional<Stand> stand;

QString tr(const char* source) {
    return QCoreApplication::translate("Ask", source);
}

struct Offered {
    QString text;
    QMessageBox::ButtonRole role;
    Answer answer;
};

enum class Usual { first, stay };

/// A question with its answers; `stay` and Escape leave all as it is. Enter gives the usual one.
Answer choose(QWidget* parent, QMessageBox::Icon icon, const char* name, const QString& title,
              const QString& question, std::initializer_list<Offered> answers,
              const QString& stay = tr("&Cancel"), Usual usual = Usual::first) {
    if (stand && stand->answer)
        return stand->answer(question);
    QMessageBox box(icon, title, question, QMessageBox::NoButton, parent);
    box.setObjectName(QLatin1String(name));
    box.setTextFormat(Qt::PlainText);
    std::vector<std::pair<QAbstractButton*, Answer>> buttons;
    for (const Offered& offered : answers)
        buttons.emplace_back(box.addButton(offered.text, offered.role), offered.answer);
    QPushButton* staying = box.addButton(stay, QMessageBox::RejectRole);
    box.setEscapeButton(staying);
    box.setDefaultButton(usual == Usual::stay ? staying : static_cast<QPushButton*>(buttons.front().first));
    box.exec();
    for (const auto& [button, answer] : buttons)
        if (box.clickedButton() == button)
            return answer;
    return Answer::cancel;
}

} // namespace

void setStand(std::optional<Stand> with) {
    stand = std::move(with);
}

Answer aboutUnsavedWork(QWidget* parent, const QString& title) {
    return choose(parent, QMessageBox::Question, "unsavedWork", tr("Unsaved work"),
                  tr("“%1” has changes that are not saved.").arg(title),
                  {{tr("&Save"), QMessageBox::AcceptRole, Answer::save},
                   {tr("&Discard them"), QMessageBox::DestructiveRole, Answer::discard}});
}

Answer aboutChangedFile(QWidget* parent, const QString& file) {
    return choose(parent, QMessageBox::Warning, "changedFile", tr("The file has changed"),
                  tr("“%1” has been changed by another program since it was opened here. Saving over it "
                     "would lose that change.")
                      .arg(QFileInfo(file).fileName()),
                  {{tr("Save under &another name…"), QMessageBox::AcceptRole, Answer::saveElsewhere},
                   {tr("Save &over it"), QMessageBox::DestructiveRole, Answer::overwrite}});
}

Answer aboutBoundTiers(QWidget* parent, const QString& question) {
    return choose(
        parent, QMessageBox::Question, "boundTiers", tr("Bound already"), question,
        {{tr("Change, and &bind again from there"), QMessageBox::AcceptRole, Answer::bindAgain},
         {tr("It &is bound so: change the plan alone"), QMessageBox::DestructiveRole, Answer::recordOnly}},
        tr("&Leave it as it is"), Usual::stay);
}

Answer aboutWorkLeftBehind(QWidget* parent, const QString& title, const QString& when) {
    return choose(
        parent, QMessageBox::Question, "workLeftBehind", tr("Work that was not saved"),
        tr("Stemwright ended without saving “%1”. Its work is kept as it was on %2.").arg(title, when),
        {{tr("&Open it"), QMessageBox::AcceptRole, Answer::open},
         {tr("&Discard it"), QMessageBox::DestructiveRole, Answer::discard}},
        tr("Ask again &later"));
}

void tell(QWidget* parent, const QString& sentence) {
    if (stand && stand->told)
        return stand->told(sentence);
    QMessageBox::warning(parent, tr("Stemwright"), sentence);
}

QString fileToOpen(QWidget* parent, const QString& folder) {
    if (stand && stand->file)
        return stand->file();
    return QFileDialog::getOpenFileName(parent, tr("Open a plan"), folder,
                                        tr("Stemwright plans (*.stemplan);;All files (*)"));
}

QString imageToOpen(QWidget* parent, const QString& folder) {
    if (stand && stand->file)
        return stand->file();
    QStringList endings;
    for (const QByteArray& format : QImageReader::supportedImageFormats())
        endings += QStringLiteral("*.") + QString::fromLatin1(format);
    return QFileDialog::getOpenFileName(parent, tr("Open a photograph of your beads"), folder,
                                        tr("Pictures (%1)").arg(endings.join(QLatin1Char(' '))) +
                                            QStringLiteral(";;") + tr("All files (*)"));
}

QString fileToSave(QWidget* parent, const QString& suggested, const QString& filter, const QString& suffix) {
    if (stand && stand->file)
        return stand->file();
    QFileDialog dialog(parent, tr("Save"), QFileInfo(suggested).path(), filter);
    dialog.setAcceptMode(QFileDialog::AcceptSave);
    dialog.setDefaultSuffix(suffix);
    dialog.selectFile(QFileInfo(suggested).fileName());
    if (dialog.exec() != QDialog::Accepted)
        return {};
    return dialog.selectedFiles().value(0);
}

} // namespace stemwright::ask
