// What the second program does (web/exchange.cpp), a job at a time: reads and writes the files of other programs, makes QR codes.
import { run_beside } from './later_program.js';

const formats = ['gpx', 'geojson', 'csv'];  // as the second program counts them

/// @param done  told the answer's bytes; or `failed` one of the faults of later_program.js
/// @return end(): then nothing is told
function exchanged(act, bytes, more, done, failed) {
  const program = run_beside('exchange', (answer) => {
    program.end();
    done(answer);
  }, failed);
  program.say({ act, bytes, more }, [bytes.buffer]);
  return program.end;
}

/// @param bytes  of a file
export const read_file = (bytes, done, failed) => exchanged('read', bytes, [], done, failed);

/// @param format  "gpx", "geojson" or "csv". @param bytes  marks and lines, as the application hands them over
export const write_file = (format, bytes, done, failed) => exchanged('write', bytes, [formats.indexOf(format)], done, failed);

/// The text's QR code, as core/exchange/qr_code.h has it.
export const make_qr_code = (text, done, failed) => exchanged('qr', new TextEncoder().encode(text), [], done, failed);
