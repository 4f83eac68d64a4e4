// The few sentences that the page must have itself, since the application can't say them: before it runs, and after it
// has stopped. All others are in shell/words.cpp.
export const words = {
  not_started: 'Fogsheet has not started yet: wait for fogsheet.ready.',
  no_program: 'Fogsheet could not start: part of it did not arrive. Check the connection and load the page again; what you kept is safe.',
  old_browser: 'Fogsheet could not start: this browser is too old for it (it needs WebAssembly). A newer one will do.',
  stopped: 'The sheet has stopped, so as not to draw a wrong line. What stands in the panels is what was true before; load the page again to go on.',
  let_go: 'Let go of the file to see what it holds.',
  fold: 'Fold this slip away',
  unfold: 'Open this slip',
};
