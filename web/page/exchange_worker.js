// The second program beside the page (web/exchange.cpp): one job, {act, bytes, more}, by the name of its function and what that takes
// before the bytes; answered with bytes.
import make_exchange from './exchange.js';
import { put, serve } from './later_worker.js';

serve(make_exchange, (module, { act, bytes, more }) => {
  const at = put(module, bytes);
  const exchange = module._exchange_open();
  module[`_exchange_${act}`](exchange, ...more, at, bytes.byteLength);
  const first = module._exchange_answer(exchange);
  const answer = module.HEAPU8.slice(first, first + module._exchange_answer_size(exchange));
  postMessage(answer, [answer.buffer]);
});
