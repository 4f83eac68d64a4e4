// The named changes of a sheet. Each checks what it was given, makes the next document and commits it as one labelled
// step; on a problem nothing changes.
#pragma once

#include "core/document/import_actions.h"
#include "core/document/leg_actions.h"
#include "core/document/mark_actions.h"
#include "core/document/note_actions.h"
#include "core/document/passage_actions.h"
#include "core/document/rose_actions.h"
#include "core/document/sheet_actions.h"
