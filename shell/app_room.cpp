// The room there is for what is kept: when it is looked at, and when the browser is asked to promise that it keeps it.
#include "shell/app_inside.h"
#include "shell/words_of_room.h"

namespace fogsheet {
namespace {

constexpr std::size_t k_writes_a_look = 40;
constexpr const char* k_asked = "promise-asked";

}  // namespace

// Some browsers ask the user then, others decide in silence. So it is done once, by itself, when there is something of the
// user's own to lose and they are at it: in the drawer, or drawing on after having come back to it. After that only by their word.
void App::Inside::watch_room() {
  Room& room = session.room;
  const bool in_drawer = session.slip == SlipId::drawer;
  if (!in_drawer) session.drawer = {};
  const bool has_opened = !std::exchange(was_in_drawer, in_drawer) && in_drawer;
  const bool something_kept = session.keeper.keeping() == Keeping::kept;
  const bool asks = room.promise == Promise::none && !room.asked && something_kept && (in_drawer || (came_back && session.keeper.kept_ms() != 0));
  if (!asks && !has_opened && writes_unlooked < k_writes_a_look) return;
  writes_unlooked = 0;
  if (asks) {
    room.asked = true;
    session.platform.put_setting(k_asked, "yes");
  }
  session.platform.look_at_room(asks);
}

void App::Inside::first_look() {
  session.room.asked = !session.platform.setting(k_asked).empty();
  session.platform.look_at_room(false);
}

void App::store_room(double used, double allowed, Promise promise) {
  Session& session = inside_->session;
  const Room before = session.room;
  session.room = {.used = used, .allowed = allowed, .promise = promise, .asked = before.asked};
  if (before.answer_wanted) session.say(words::promise_answer(promise));
  if (before != session.room) ++session.panels_revision;  // nothing of it is on the sheet
  inside_->watch_room();
}

}  // namespace fogsheet
