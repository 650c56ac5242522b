// Everything a screen draws with, in one include.
#pragma once

#include "app/ui/button.h"
#include "app/ui/choice.h"
#include "app/ui/field.h"
#include "app/ui/grade_mark.h"
#include "app/ui/keypad.h"
#include "app/ui/panel.h"
#include "app/ui/photo.h"
#include "app/ui/row.h"
#include "app/ui/screen.h"
#include "app/ui/scroll.h"
#include "app/ui/sheet.h"
#include "app/ui/ui.h"
