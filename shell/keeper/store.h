// What the keeper asks of a store on the device, and what the store answers: records by name, and writes that are done as
// a whole or not at all. web does them in IndexedDB; tests fake a store in which everything fails.
#pragma once

#include <cstdint>
#include <vector>

namespace fogsheet {

/// The parts of the store. Their order is part of what is kept: new ones go at the end.
enum class StorePart : std::uint8_t {
  sheets,   // (sheet, 0): all of a sheet as it was when its journal was last taken up
  journal,  // (sheet, sequence): what changed since
  desk,     // (0, 0): what lay on the sheets, and which was in hand; (boat, 1): all of a boat
  damaged,  // (sheet, when): records that could not be read, for whoever can
};

inline constexpr std::uint64_t k_boat_sequence = 1;  // of a boat in the desk's part

using StoreBytes = std::vector<std::uint8_t>;

/// A sheet or a boat. One page at a time writes it.
struct StoreDocument {
  StorePart part = StorePart::sheets;  // desk for a boat
  std::uint64_t key = 0;

  auto operator<=>(const StoreDocument&) const = default;
};

struct StoreRecord {
  StorePart part = StorePart::sheets;
  std::uint64_t sheet = 0;
  std::uint64_t sequence = 0;
  StoreBytes bytes;

  bool operator==(const StoreRecord&) const = default;
};

struct StoreAct {
  enum class Kind : std::uint8_t {
    put,    // in place of what was there
    add,    // the whole write fails with `taken` when there is one of that name
    erase,  // all of `part` and `sheet` with a sequence in [sequence, last]
  };
  Kind kind = Kind::put;
  StorePart part = StorePart::sheets;
  std::uint64_t sheet = 0;
  std::uint64_t sequence = 0;
  std::uint64_t last = 0;
  StoreBytes bytes = {};
};

/// Done as a whole or not at all, after the writes that were asked for before it.
struct StoreWrite {
  std::uint64_t id = 0;  // for the answer
  std::vector<StoreAct> acts;
};

/// What is asked beside writes, each of one document.
struct StoreAsk {
  enum class Kind : std::uint8_t {
    claim,      // to be the page that writes it, as soon as no other is
    claim_now,  // and a page that is, is asked to let go of it
    let_go,
    read,
  };
  Kind kind = Kind::claim;
  StoreDocument document;

  bool operator==(const StoreAsk&) const = default;
};

/// What the page tells of a document.
enum class StoreNews : std::uint8_t {
  read,       // with all its records, as was asked
  granted,    // this page writes it from now on; with all its records
  elsewhere,  // another page does; granted comes when it has gone
  wanted,     // another page asks to be the one that does
  heard,      // another page has written: with the record when it is of the journal, else to be read
};

/// Why nothing can be kept.
enum class StoreFault : std::uint8_t {
  none,
  missing,    // the browser has no store, or none for this page
  silent,     // it does not answer
  full,
  refused,    // any other failure
  taken,      // another page has written under that name
  elsewhere,  // another page keeps the sheets
};

}  // namespace fogsheet
