#include "shell/plotted_passage.h"

#include "shell/session.h"

namespace fogsheet {

PlottedPassage plotted_passage(const Session& session) {
  const Passage* passage = session.passage();
  if (!passage) return {};
  const PassagePlan& plan = session.plan();
  return plot_passage(session.document(), *passage, plan, passage->deck_log.empty() ? plan : session.plan_under_way(), *session.facts().projection);
}

}  // namespace fogsheet
