// Keeps the sheets on the device: a pure state machine. What happened goes in, writes to a store come out; it reads no
// clock and does nothing itself. Each step is written to its sheet's journal in a write of its own, at once, and only
// shown as kept when the store has answered; whole sheets, which take their journal up, and the desk are written when
// things have come to rest, or when the page is left. A write that failed is made good by writing the whole sheet, again
// and again until it succeeds.
#pragma once

#include <algorithm>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "shell/keeper/records.h"
#include "shell/keeper/store.h"
#include "shell/sheets.h"

namespace fogsheet {

enum class Keeping {
  waiting,  // the store has not been read yet
  nothing,  // nothing to keep so far
  writing,  // something is on its way
  kept,
  failed,   // and is tried again
  off,      // nothing can be kept
};

/// What was found amiss in the store.
struct Finding {
  enum class Kind {
    newer,        // of a newer program; left alone
    part_newer,   // a newer program has put on a sheet what is not understood here; the rest can be read
    past_lost,    // a sheet's record was damaged: it is here as it last was whole, without its past
    steps_lost,   // a sheet's journal was damaged: the last steps are not here
    unreadable,   // nothing could be made of a sheet; it is left as it is
    boat_unreadable,  // the same of a boat
    boat_newer,
    parted,       // a sheet was changed in two pages at once: what was done in each is a sheet of its own
  };
  Kind kind = Kind::unreadable;
  SheetKey sheet;

  bool operator==(const Finding&) const = default;
};

/// A record of the store that can't be used here.
struct UnusedRecord {
  StoreRecord record;
  bool is_newer = false;  // good, for a newer program; else damaged

  bool operator==(const UnusedRecord&) const = default;
};

class Keeper {
 public:
  // -- what happened

  /// The store's records, all of them. Sheets that were kept come into `sheets`, in place of one that was laid down at
  /// the start and never touched; the one that was changed last is in hand then, until the desk says better.
  /// @param fault  why nothing may be written though it could be read
  /// @return whether another sheet is in hand now
  bool store_read(const std::vector<StoreRecord>& records, Sheets& sheets, std::int64_t now_ms, StoreFault fault = StoreFault::none);

  /// The boats among the store's records, after store_read.
  void read_boats(const std::vector<StoreRecord>& records, Boats& boats);

  /// The store can't be read, or not yet: `silent` may still be followed by store_read, `elsewhere` too.
  void store_refused(StoreFault why);

  /// Something may have been done. @param desk what lies on the sheets, as bytes of the caller's own
  void look(Sheets& sheets, StoreBytes desk, std::int64_t now_ms);

  /// The same of the boats.
  void look(Boats& boats, std::int64_t now_ms);

  /// What the page tells of a document that other pages may write too. What they have written comes into `sheets` and
  /// `boats`; where both have changed it, what was done here stays beside, under a new key.
  /// @param records  see StoreNews
  void told(StoreNews what, StoreDocument document, const std::vector<StoreRecord>& records, Sheets& sheets, Boats& boats, std::int64_t now_ms);

  /// Whether these records, all of a sheet or the last, hold anything that is not known here.
  bool is_news_of(SheetKey sheet, const std::vector<StoreRecord>& records) const;

  void written(std::uint64_t write, std::int64_t now_ms);
  void failed(std::uint64_t write, StoreFault why, std::int64_t now_ms);

  /// Throws away what is damaged; what a newer program wrote stays.
  void put_damaged_away();

  /// The page is put out of sight, or left: what waits for rest is written now.
  void hide(Sheets& sheets, std::int64_t now_ms);

  /// The time asked for has come.
  void wake(Sheets& sheets, std::int64_t now_ms);

  // -- what is to be done

  std::vector<StoreWrite> take_writes();
  std::vector<StoreAsk> take_asks() { return std::exchange(asks_, {}); }
  /// When to call wake(), ms since 1970; 0 for not at all.
  std::int64_t wakes_at_ms() const { return wakes_at_ms_; }

  // -- how it stands

  Keeping keeping() const;
  /// Whether what was done is on its way, or waits for the store's first answer.
  bool is_busy() const { return keeping() == Keeping::writing || keeping() == Keeping::waiting; }
  StoreFault fault() const { return fault_ == StoreFault::none && any_claim([](const Claim& claim) { return claim.is_late; }) ? StoreFault::elsewhere : fault_; }
  /// Another page writes the sheet: what it writes comes here too.
  bool follows(SheetKey sheet) const;
  std::int64_t kept_ms() const { return kept_ms_; }  // when the last step was kept; 0 for none
  /// Up to which state of its history the sheet is known to be kept; none when it isn't at all.
  std::optional<std::size_t> kept_state(SheetKey sheet) const;
  /// Whether there is nothing here but the sheet that was laid down at the start, as it was: it is not kept.
  bool has_nothing(const Sheets& sheets) const { return sheets.untouched() && !sheets_.contains(sheets.in_hand().key); }
  const std::vector<Finding>& findings() const { return findings_; }
  /// What of the store can't be used, now and from visits before: as it is, for whoever can.
  const std::vector<UnusedRecord>& unused() const { return unused_; }
  std::size_t damaged() const { return static_cast<std::size_t>(std::count_if(unused_.begin(), unused_.end(), [](const UnusedRecord& each) { return !each.is_newer; })); }
  /// The desk that was kept; empty for none.
  const StoreBytes& kept_desk() const { return kept_desk_; }

 private:
  // What is known of a sheet's records in the store, counting writes under way as done.
  struct Written {
    bool is_there = false;      // a whole sheet
    bool is_broken = false;     // a write failed: the journal may have a gap
    bool is_unwritten = false;  // that write was of what is here and nowhere else
    bool is_newer = false;      // holds what a newer program put in: it is not written here
    bool is_parted = false;     // another page has written in its place: it is being read
    std::uint64_t sequence = 0;  // of its last journal record
    std::uint64_t journal = 0;   // how many since the whole sheet
    std::uint32_t checksum = 0;  // of the last record
    SheetState state;
    std::size_t present = 0;     // where the history stood
    std::uint64_t commits = 0;
    std::optional<std::size_t> kept_present = {};  // the same, as far as the store has answered
    std::vector<StoreAct> set_aside = {};  // what was damaged: goes with the whole sheet that is written in its place
  };

  struct UnderWay {
    SheetKey sheet;  // none for the desk, and for what is erased
    bool is_whole = false;
    std::size_t present = 0;
    SheetKey erased = {};
    BoatKey boat = {};
  };

  // What is known of a boat's record.
  struct WrittenBoat {
    std::size_t present = 0;
    std::uint64_t commits = 0;
    bool removed = false;
    std::uint32_t checksum = 0;
    bool is_broken = false;  // the last write failed
    bool is_parted = false;  // as of a sheet
  };

  enum class Hold : std::uint8_t { asked, elsewhere, given, ours };

  // How it stands with the right to write a document.
  struct Claim {
    Hold hold = Hold::asked;
    bool is_to_come = false;          // it was laid down here: the lock is as good as ours
    bool is_wanted = false;           // by another page, though it is ours
    bool is_late = false;             // the page that has it does not let go
    std::int64_t waits_since_ms = 0;  // something is to be written; 0 for no
    std::int64_t ask_at_ms = 0;       // again
  };

  bool read_sheet(SheetKey key, const StoreRecord& whole, const std::vector<const StoreRecord*>& journal, Sheets& sheets, std::int64_t now_ms);
  static bool says_more(const SheetInDrawer& sheet, const Written& known);
  bool takes_up_what_is_known(SheetKey key, const std::vector<StoreRecord>& records);
  bool changed_here(const Sheets& sheets, SheetKey key) const;
  void leave_unused(const StoreRecord& record, bool is_newer);
  bool may_write() const { return is_read_ && !is_over_; }
  void keep_sheet(SheetInDrawer& sheet, std::int64_t now_ms);
  void write_whole(SheetInDrawer& sheet);
  void write_step(SheetInDrawer& sheet);
  void write_desk();
  void erase_sheet(SheetKey key);
  StoreWrite& new_write(UnderWay under_way);
  bool is_under_way(StoreDocument document) const;
  bool is_broken(StoreDocument document) const;
  bool is_any_broken() const;
  void wake_by(std::int64_t at_ms);
  void found(Finding finding);
  bool read_boat(const StoreRecord& record, Boats& boats);
  static bool is_kept(const KeptBoat& boat, const WrittenBoat& known);

  static StoreDocument document_of(SheetKey key) { return {StorePart::sheets, key.value}; }
  static StoreDocument document_of(BoatKey key) { return {StorePart::desk, key.value}; }
  bool is_ours(StoreDocument document) const;
  void own(StoreDocument document);  // for what is laid down here
  /// Whether this page may write the document now. If not, it is asked for, with haste when there is news.
  bool may_write(StoreDocument document, bool has_news, std::int64_t now_ms);
  void has_no_news(StoreDocument document);
  void let_go_of_wanted(std::int64_t now_ms);
  bool any_claim(bool (*is)(const Claim&)) const;
  bool hear(SheetKey key, const std::vector<StoreRecord>& records, Sheets& sheets);
  void take_up(SheetKey key, const std::vector<StoreRecord>& records, Sheets& sheets, std::int64_t now_ms);
  void take_up(BoatKey key, const std::vector<StoreRecord>& records, Boats& boats);
  void keep_one_in_hand(Sheets& sheets);
  void part(const UnderWay& lost);
  void read_parted(const UnderWay& answered);

  bool is_read_ = false;
  bool is_over_ = false;  // nothing is written any more
  StoreFault fault_ = StoreFault::none;
  std::map<SheetKey, Written> sheets_;
  std::map<BoatKey, WrittenBoat> boats_;
  std::map<StoreDocument, Claim> claims_;
  std::vector<StoreAsk> asks_;
  std::map<std::uint64_t, UnderWay> under_way_;
  std::vector<StoreWrite> writes_;
  std::uint64_t next_write_ = 1;
  std::vector<Finding> findings_;
  std::vector<UnusedRecord> unused_;
  std::vector<SheetKey> to_erase_;  // what could not be erased

  StoreBytes kept_desk_;
  StoreBytes desk_;
  bool desk_waits_ = false;
  bool desk_may_be_others_ = false;  // another page was heard of, which puts its own in the store, at its end without a word
  std::int64_t kept_ms_ = 0;
  std::int64_t wakes_at_ms_ = 0;
  std::int64_t rests_at_ms_ = 0;  // when whole sheets are written that are due
  std::int64_t desk_at_ms_ = 0;
  std::int64_t retry_at_ms_ = 0;
  std::int64_t retry_after_ms_ = 0;
};

}  // namespace fogsheet
