// What is said of all that is kept as one file.
#pragma once

#include <string>

#include "core/base/date.h"
#include "shell/keeper/restore.h"

namespace fogsheet::words {

/// "Fogsheet 2026-11-25.fogsheets".
std::string backup_name(Date day);
/// What went into it. @param were_read  whether the photographs could be; else they are not in it
std::string saved_all(const std::vector<BackupRow>& rows, std::size_t photographs, bool were_read);
inline std::string save_all() { return "Save all as one file"; }

/// "Fogsheet damaged 2026-11-25.fogsheets".
std::string damaged_name(Date day);
inline std::string save_damaged() { return "Save what can't be read"; }
inline std::string put_damaged_away() { return "Put it away"; }
inline std::string save_damaged_first() { return "Save it first."; }
std::string damaged_before(std::size_t records);
std::string damaged_gone();

/// "12 sheets, 2 of them taken out, and 1 boat".
std::string backup_holds(const Backup& backup);
/// @param day  in words; empty when it is not told any more
std::string backup_made(const std::string& day);
/// What of it would come in, what stands here already.
std::string would_come(const Fates& fates);
std::string take_in(std::size_t count);
std::string taken_in(const Fates& fates);
/// "comes beside yours", "here already".
std::string fate(Fate fate);
/// Of the photographs in it. @param cut_off  how many are not whole
std::string photographs_come(std::size_t count);
std::string photographs_cut_off(std::size_t cut_off);
inline std::string take_in_photographs() { return "Take its photographs in"; }
/// How it went with them; empty where none came, and none was amiss.
std::string photographs_came(const PhotographsUnderWay& under_way);
std::string amiss(Backup::Amiss::Kind kind);
std::string amiss_caption(std::size_t count);
/// A damaged record that has no name any more.
std::string nameless();
std::string pieces_set_aside(std::size_t count);
std::string pieces_missing(std::size_t count);

}  // namespace fogsheet::words
