#include "app/ask.h"

#include <QCoreApplication>
#include <QFileDialog>
#include <QFileInfo>
#include <QImageReader>
#include <QMessageBox>
#include <QPushButton>

namespace stemwright::ask {

namespace {

std::optional<Stand> stand;

QString tr(const char* source) {
    return QCoreApplication::translate("Ask", source);
}

} // namespace

void setStand(std::optional<Stand> with) {
    stand = std::move(with);
}

Answer aboutUnsavedWork(QWidget* parent, const QString& title) {
    const QString question = tr("“%1” has changes that are not saved.").arg(title);
    if (stand && stand->answer)
        return stand->answer(question);
    QMessageBox box(QMessageBox::Question, tr("Unsaved work"), question, QMessageBox::NoButton, parent);
    box.setObjectName(QStringLiteral("unsavedWork"));
    QPushButton* save = box.addButton(tr("&Save"), QMessageBox::AcceptRole);
    QPushButton* discard = box.addButton(tr("&Discard them"), QMessageBox::DestructiveRole);
    QPushButton* stay = box.addButton(tr("&Cancel"), QMessageBox::RejectRole);
    box.setDefaultButton(save);
    box.setEscapeButton(stay);
    box.exec();
    if (box.clickedButton() == save)
        return Answer::save;
    return box.clickedButton() == discard ? Answer::discard : Answer::cancel;
}

Answer aboutChangedFile(QWidget* parent, const QString& file) {
    const QString question =
        tr("“%1” has been changed by another program since it was opened here. Saving over it "
           "would lose that change.")
            .arg(QFileInfo(file).fileName());
    if (stand && stand->answer)
        return stand->answer(question);
    QMessageBox box(QMessageBox::Warning, tr("The file has changed"), question, QMessageBox::NoButton, parent);
    box.setObjectName(QStringLiteral("changedFile"));
    QPushButton* elsewhere = box.addButton(tr("Save under &another name…"), QMessageBox::AcceptRole);
    QPushButton* over = box.addButton(tr("Save &over it"), QMessageBox::DestructiveRole);
    QPushButton* stay = box.addButton(tr("&Cancel"), QMessageBox::RejectRole);
    box.setDefaultButton(elsewhere);
    box.setEscapeButton(stay);
    box.exec();
    if (box.clickedButton() == elsewhere)
        return Answer::saveElsewhere;
    return box.clickedButton() == over ? Answer::overwrite : Answer::cancel;
}

Answer aboutWorkLeftBehind(QWidget* parent, const QString& title, const QString& when) {
    const QString question =
        tr("Stemwright ended without saving “%1”. Its work is kept as it was on %2.").arg(title, when);
    if (stand && stand->answer)
        return stand->answer(question);
    QMessageBox box(QMessageBox::Question, tr("Work that was not saved"), question, QMessageBox::NoButton,
                    parent);
    box.setObjectName(QStringLiteral("workLeftBehind"));
    QPushButton* open = box.addButton(tr("&Open it"), QMessageBox::AcceptRole);
    QPushButton* discard = box.addButton(tr("&Discard it"), QMessageBox::DestructiveRole);
    QPushButton* later = box.addButton(tr("Ask again &later"), QMessageBox::RejectRole);
    box.setDefaultButton(open);
    box.setEscapeButton(later);
    box.exec();
    if (box.clickedButton() == open)
        return Answer::open;
    return box.clickedButton() == discard ? Answer::discard : Answer::cancel;
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
