// Files that come in: picked, dropped, or opened by the system. One is read at a time; which road it goes the application says.
import { read_file } from './exchange_jobs.js';
import { faults, patience_s } from './later_program.js';

const head_bytes = 200;
const roads = { none: 0, sheet: 1, exchange: 2, all: 3 };  // as in FileRoad

export class Files {
  #tell;
  #reading = null;   // {end}, of the one that is being read
  at_the_door = null;  // the file that the application is being told of, for it to take as a photograph (platform.js)
  of_all = new Blob();  // the file of all that is kept that was read last: photographs lie in it behind what the application reads

  /// @param tell  calls a method of the program and gives its answer
  constructor(tell) {
    this.#tell = tell;
  }

  /// Nothing more comes of the one that is being read.
  stop() {
    this.#reading?.end();
    this.#reading = null;
  }

  /// The first of them; the application says that the others are left.
  async take([file, ...others]) {
    if (!file) return;
    this.stop();
    const reading = { end() {} };
    this.#reading = reading;
    const told = (what, ...more) => {
      this.#reading = null;
      this.#tell(what, ...more);
    };
    const chosen = (size, head) => this.#tell('file_chosen', file.name, size, head, others.length);
    let road, bytes;
    try {
      const head = new Uint8Array(await file.slice(0, head_bytes).arrayBuffer());
      if (this.#reading !== reading) return;
      this.at_the_door = file;
      road = chosen(file.size, head);
      this.at_the_door = null;
      const wanted = road === roads.all ? file.slice(0, this.#tell('backup_bytes_wanted')) : file;
      if (road !== roads.none) bytes = new Uint8Array(await wanted.arrayBuffer());
    } catch {
      if (this.#reading !== reading) return;
      if (road === undefined) chosen(0, new Uint8Array());
      return told('file_not_read', faults.no_bytes, 0);
    }
    if (this.#reading !== reading) return;
    if (road === roads.sheet) told('file_opened', new TextDecoder().decode(bytes));
    else if (road === roads.all) {
      this.of_all = file;
      told('backup_read', bytes);
    }
    else if (road === roads.exchange) reading.end = read_file(bytes, (read) => told('file_read', read), (fault) => told('file_not_read', fault, patience_s));
  }

  /// What is dropped on the page, and what the system opens with it once it is installed.
  /// @param hover  told whether a file is held over the page
  listen(hover) {
    const brings_files = (event) => event.dataTransfer?.types.includes('Files');
    document.addEventListener('dragover', (event) => {
      if (!brings_files(event)) return;
      event.preventDefault();
      hover(true);
    });
    document.addEventListener('dragleave', (event) => {
      if (!event.relatedTarget) hover(false);  // out of the page, not from one part of it to another
    });
    document.addEventListener('drop', (event) => {
      if (!brings_files(event)) return;
      event.preventDefault();
      hover(false);
      this.take(event.dataTransfer.files);
    });
    window.launchQueue?.setConsumer(async ({ files }) => this.take(await Promise.all(files.map((each) => each.getFile()))));
  }
}
