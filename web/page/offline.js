// Use without a signal: registers the service worker, tells the application how that stands, and lets a newer version
// take over when the user asks for it.
import { is_one_file } from './own_files.js';

let waiting = null;

/// @param tell  called with "ready", "waiting", "unsupported", "failed", or "whole" where the page is one file
export async function keep_offline(tell) {
  if (is_one_file) return tell('whole');
  if (!navigator.serviceWorker) return tell('unsupported');
  try {
    const script = new URL('../sw.js', import.meta.url);
    const registration = await navigator.serviceWorker.register(script, { updateViaCache: 'none' });
    const look = () => {
      waiting = registration.waiting;
      if (waiting && navigator.serviceWorker.controller) tell('waiting');
      else if (registration.active) tell('ready');
    };
    const follow = (worker) => worker?.addEventListener('statechange', () => {
      if (worker.state === 'redundant' && !registration.active) tell('failed');
      else look();
    });
    follow(registration.installing);
    registration.addEventListener('updatefound', () => follow(registration.installing));
    look();
  } catch {
    tell('failed');
  }
}

/// Loads the page anew, in the version that waits.
export function use_waiting_version() {
  if (!waiting) return;
  navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
  waiting.postMessage('take over');
}

/// The worker asks which version's files an open page still needs.
export function answer_worker(version) {
  navigator.serviceWorker?.addEventListener('message', (event) => {
    if (event.data === 'which version') event.ports[0]?.postMessage(version);
  });
  navigator.serviceWorker?.startMessages?.();
}
