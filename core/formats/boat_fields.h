// The fields of a boat and of a kept card, each with its bounds, described once (field_list.h).
#pragma once

#include <span>
#include <vector>

#include "core/boat/boat.h"
#include "core/boat/kept_card.h"

namespace fogsheet {

inline constexpr double k_most_speed_kn = 60;
inline constexpr double k_most_object_nm = 60;
inline constexpr double k_most_circle_m = 5'000;
inline constexpr double k_most_field_nt = 100'000;

std::vector<std::uint8_t> bytes_of(const Boat& boat);
std::vector<std::uint8_t> bytes_of(const KeptCard& card);

/// A boat's bytes cut into what changes by itself: her name, each compass, each entry of its log.
std::vector<std::vector<std::uint8_t>> pieces_of(const Boat& boat);

/// Everything in its bounds, ids unique and below next_id, a card's headings in order. Faults: text_section ("boat", "card").
Result<Boat> boat_from(std::span<const std::uint8_t> bytes);
Result<KeptCard> kept_card_from(std::span<const std::uint8_t> bytes);

/// As it can be kept: numbers in whole parts, texts trimmed. Faults: those of FieldChecker, card_heading_twice.
Result<Boat> as_kept(Boat boat);
Result<LogEntry> as_kept(LogEntry entry);
Result<KeptCard> as_kept(KeptCard card);

}  // namespace fogsheet
