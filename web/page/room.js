// How much room the browser gives for what is kept, and whether it promises to keep it. Whatever it lacks or refuses is told as
// not known: WebKit has learned to tell late, private windows may refuse.
const promises = { unknown: 0, none: 1, given: 2 };  // as in Promise

/// [used, allowed, promise]. @param ask  whether the browser is asked to promise first; some ask the user then
export async function look_at_room(ask) {
  const storage = navigator.storage ?? {};
  const answer = async (name) => {
    try {
      return await storage[name]();
    } catch {
      return undefined;
    }
  };
  if (ask) await answer('persist');
  const [room, kept] = await Promise.all([answer('estimate'), answer('persisted')]);
  return [room?.usage ?? 0, room?.quota ?? 0, kept === undefined ? promises.unknown : kept ? promises.given : promises.none];
}
