#pragma once

#include <QFont>

class QLabel;
class QWidget;

namespace stemwright {

/// The window's type so many times as large: to be read at arm's length.
QFont benchFont(double times, bool bold = false);

/// A label in it that wraps its words and takes them as plain text; `name` is for who looks for it.
QLabel* benchLabel(QWidget* parent, const char* name, double times, bool bold = false);

} // namespace stemwright
