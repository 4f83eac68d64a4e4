// Where the device says it is (W3C Geolocation), for as long as that is wanted.
const why_not = { 1: 'refused', 2: 'unknown', 3: 'late' };  // GeolocationPositionError's codes
const patience_ms = 30_000;

export class OwnPosition {
  #tell;
  #watch = null;

  /// @param tell  told 'own_position' with degrees, metres and milliseconds, or 'no_own_position' and why; never from inside follow()
  constructor(tell) {
    this.#tell = tell;
  }

  follow(wanted) {
    if (this.#watch) navigator.geolocation.clearWatch(this.#watch.id);
    this.#watch = null;
    if (!wanted) return;
    if (!navigator.geolocation || !isSecureContext) return queueMicrotask(() => this.#tell('no_own_position', 'absent'));
    const watch = { id: 0 };  // what comes for an older one is no news
    this.#watch = watch;
    const tell = (...told) => { if (this.#watch === watch) this.#tell(...told); };
    watch.id = navigator.geolocation.watchPosition(
      ({ coords, timestamp }) => tell('own_position', coords.latitude, coords.longitude, coords.accuracy, timestamp),
      ({ code }) => tell('no_own_position', why_not[code]),
      { enableHighAccuracy: true, timeout: patience_ms, maximumAge: 0 });
  }
}
