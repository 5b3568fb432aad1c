#include "app/style_sheet.h"

#include "app/look.h"

#include <utility>

namespace stemwright::look {

QString styleSheet() {
    QString sheet = QStringLiteral(R"(
QWidget#topBar { background: @bar; border-bottom: 1px solid @line; }
QWidget#statusLine { background: @bar; border-top: 1px solid @line; }
QWidget#side { background: @paper; border-left: 1px solid @line; }
QScrollArea, QScrollArea > QWidget > QWidget#supplies { background: transparent; }
QListView#findingsList { background: transparent; outline: none; }
QListView#findingsList:focus { border: 2px solid @focus; border-radius: 6px; }
QLabel[quiet="true"] { color: @quiet; }
QLabel[refusal="true"] { color: @bad; font-weight: 600; }
QLabel[plate="true"] { background: @night; color: @onNight; border-radius: 6px; padding: 6px 10px; }
QListWidget#potFindings::item { padding: 3px 4px; border-bottom: 1px solid @line; }
QWidget#offer { background: @accentSoft; border: 1px solid @accent; border-radius: @cornerpx; }
QToolTip { background: @night; color: @onNight; border: none; padding: 4px 6px; }

QDialogButtonBox { dialogbuttonbox-buttons-have-icons: 0; }
QPushButton { background: @card; color: @ink; border: 1px solid @edge; border-radius: 6px; padding: 3px 12px; min-height: 20px; }
QPushButton:hover { background: @accentSoft; }
QPushButton:pressed { background: @line; }
QPushButton:focus { border: 2px solid @focus; padding: 2px 11px; }
QPushButton[small="true"] { padding: 1px 8px; border-color: @faint; border-radius: 5px; }
QPushButton[small="true"]:focus { border: 2px solid @focus; padding: 0 7px; }
QPushButton::menu-indicator { image: url(:/marks/down.svg); width: 9px; height: 9px; subcontrol-origin: padding; subcontrol-position: center right; right: 5px; }
QPushButton[menu="true"] { padding-right: 20px; }
QPushButton[large="true"] { min-height: 66px; border-radius: 10px; }
QPushButton[tall="true"] { min-height: 36px; }
QPushButton[swatch="true"] { text-align: left; }
QPushButton[tall="true"]:checked { background: @night; color: @onNight; border-color: @night; }
QPushButton[tall="true"]:checked:focus { border-color: @focus; }
QPushButton[small="true"]:checked { background: @accentSoft; border: 2px solid @accent; padding: 0 7px; }
QPushButton[small="true"]:checked:focus { border-color: @focus; }
QPushButton:disabled { color: @faint; border-color: @line; }
QPushButton[main="true"], QPushButton:default { background: @accent; color: @card; border-color: @accent; }
QPushButton[main="true"]:hover, QPushButton:default:hover { background: @night; }
QPushButton[main="true"]:disabled, QPushButton:default:disabled { background: @card; color: @faint; border-color: @line; }
QPushButton[place="true"] { background: transparent; border: 2px solid transparent; border-radius: 13px; padding: 2px 16px; min-height: 22px; }
QPushButton[place="true"]:hover { background: @line; }
QPushButton[place="true"]:checked { background: @night; color: @onNight; }
QPushButton[place="true"]:focus { border-color: @focus; }

QToolButton#units { padding-right: 14px; }
QToolButton#units::menu-indicator { image: url(:/marks/down.svg); width: 9px; height: 9px; subcontrol-origin: padding; subcontrol-position: center right; right: 3px; }

QLineEdit, QPlainTextEdit, QTextEdit, QSpinBox, QDoubleSpinBox, QComboBox, QDateEdit { background: @card; color: @ink;
  border: 1px solid @edge; border-radius: 5px; padding: 2px 6px; min-height: 20px; selection-background-color: @accent; selection-color: @card; }
QLineEdit:focus, QPlainTextEdit:focus, QTextEdit:focus, QSpinBox:focus, QDoubleSpinBox:focus, QComboBox:focus, QDateEdit:focus { border: 2px solid @focus; padding: 1px 5px; }
QLineEdit[refused="true"] { color: @bad; border: 2px solid @bad; padding: 1px 5px; }
QLineEdit:disabled, QSpinBox:disabled, QDoubleSpinBox:disabled, QComboBox:disabled { color: @faint; }

QComboBox { padding-right: 22px; combobox-popup: 0; }
QComboBox:focus { padding-right: 21px; }
QComboBox::drop-down, QDateEdit::drop-down { subcontrol-origin: padding; subcontrol-position: center right; width: 20px; border: none; }
QComboBox::down-arrow { image: url(:/marks/down.svg); width: 10px; height: 10px; }
QComboBox QAbstractItemView { background: @card; border: 1px solid @edge; selection-background-color: @accentSoft; selection-color: @ink; }
QComboBox QAbstractItemView::item { min-height: 24px; padding: 0 4px; }
QSpinBox, QDoubleSpinBox, QDateEdit { padding-right: 24px; }
QSpinBox:focus, QDoubleSpinBox:focus, QDateEdit:focus { padding-right: 23px; }
QSpinBox::up-button, QDoubleSpinBox::up-button, QDateEdit::up-button { subcontrol-origin: border; subcontrol-position: top right; width: 22px; border: none; border-left: 1px solid @line; }
QSpinBox::down-button, QDoubleSpinBox::down-button, QDateEdit::down-button { subcontrol-origin: border; subcontrol-position: bottom right; width: 22px; border: none; border-left: 1px solid @line; }
QSpinBox::up-button:hover, QSpinBox::down-button:hover, QDoubleSpinBox::up-button:hover, QDoubleSpinBox::down-button:hover { background: @accentSoft; }
QSpinBox::up-arrow, QDoubleSpinBox::up-arrow, QDateEdit::up-arrow { image: url(:/marks/up.svg); width: 9px; height: 9px; }
QSpinBox::down-arrow, QDoubleSpinBox::down-arrow, QDateEdit::down-arrow { image: url(:/marks/down.svg); width: 9px; height: 9px; }

QListWidget { background: @card; border: 1px solid @edge; border-radius: 5px; outline: none; selection-background-color: @accentSoft; selection-color: @ink; }
QListWidget:focus { border: 2px solid @focus; }
QListWidget::item { min-height: 24px; padding: 0 4px; }

QTabWidget::pane { border: 1px solid @line; border-radius: 4px; background: @paper; }
QTabBar::tab { background: @bar; color: @ink; border: 1px solid @line; padding: 4px 12px; min-height: 18px; margin-right: 2px; }
QTabBar::tab:selected { background: @card; border-bottom: 2px solid @accent; }
QTabBar::tab:focus { border: 2px solid @focus; }

QTableView { background: @card; alternate-background-color: @side; gridline-color: @line; border: 1px solid @line; border-radius: 4px;
  selection-background-color: @accentSoft; selection-color: @ink; }
QTableView:focus { border: 2px solid @focus; }
QHeaderView::section { background: @bar; color: @quiet; border: none; border-right: 1px solid @line; border-bottom: 1px solid @line; padding: 3px 6px; }
QTableCornerButton::section { background: @bar; border: none; }

QMenuBar { background: @bar; color: @ink; }
QMenuBar::item { padding: 4px 9px; background: transparent; }
QMenuBar::item:selected { background: @line; }
QMenu { background: @card; color: @ink; border: 1px solid @line; padding: 4px; }
QMenu::item { padding: 5px 26px 5px 22px; min-height: 18px; border-radius: 4px; }
QMenu::item:selected { background: @accentSoft; color: @ink; }
QMenu::item:disabled { color: @quiet; }
QMenu::separator { height: 1px; background: @line; margin: 4px 8px; }

QScrollBar:vertical { background: transparent; width: 12px; margin: 0; }
QScrollBar:horizontal { background: transparent; height: 12px; margin: 0; }
QScrollBar::handle { background: @handle; border-radius: 4px; margin: 2px; }
QScrollBar::handle:vertical { min-height: 30px; }
QScrollBar::handle:horizontal { min-width: 30px; }
QScrollBar::handle:hover { background: @quiet; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }
)");
    const std::pair<const char*, QColor> colours[] = {
        {"@paper", paper},   {"@side", side},       {"@bar", bar},
        {"@card", card},     {"@line", line},       {"@ink", ink},
        {"@quiet", quiet},   {"@faint", faint},     {"@accentSoft", accentSoft},
        {"@accent", accent}, {"@onNight", onNight}, {"@night", night},
        {"@focus", focus},   {"@bad", bad},         {"@edge", edge},
        {"@handle", faint}};
    for (const auto& [name, colour] : colours)
        sheet.replace(QLatin1String(name), colour.name());
    sheet.replace(QLatin1String("@corner"), QString::number(corner));
    return sheet;
}

} // namespace stemwright::look
