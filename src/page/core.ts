/** The whole program inside a page or in Node: arguments and files in, what it prints out. Opens nothing by itself. */

import {
  Directory,
  Fd,
  File,
  type Inode,
  OpenFile,
  PreopenDirectory,
  WASI,
  WASIProcExit,
  wasi as wasip1,
} from "@bjorn3/browser_wasi_shim";

/** What a call of the program ended with. */
export interface Answer {
  /** The exit code, as the command line promises it; `BROKEN` where the program broke off. */
  code: number;
  /** Standard output. */
  out: Uint8Array;
  /** Standard error. */
  err: string;
}

/** The exit code of a program that broke off: no answer of it counts. The same as of a native program that aborts. */
export const BROKEN = 134;

/** The working folder lies so deep in the tree that names may go up from it. */
const HERE = ["0", "1", "2", "3"];

interface Exports {
  memory: WebAssembly.Memory;
  _initialize(): void;
  answer(): number;
}

/** The program, compiled once. One instance answers call after call; it is made anew where one broke off. */
export class Core {
  private readonly module: WebAssembly.Module;
  private instance: Exports | undefined;
  private readonly wasi: WASI;
  private readonly out = new Pipe();
  private readonly err = new Pipe();

  private constructor(module: WebAssembly.Module) {
    this.module = module;
    this.wasi = new WASI([], [], [], { debug: false });
    const wasi = this.wasi;
    const memory = () => new DataView(wasi.inst.exports.memory.buffer);
    // The package counts letters where bytes are asked for, so that names with an umlaut would be written past their room.
    wasi.wasiImport["args_sizes_get"] = (count: number, size: number) => {
      const bytes = wasi.args.reduce((sum, arg) => sum + encoded(arg).length + 1, 0);
      memory().setUint32(count, wasi.args.length, true);
      memory().setUint32(size, bytes, true);
      return wasip1.ERRNO_SUCCESS;
    };
  }

  /** Compiles the program. */
  static async open(wasm: BufferSource): Promise<Core> {
    return new Core(await WebAssembly.compile(wasm));
  }

  /**
   * Calls the program with these arguments (without its own name) beside these files, by the names that the arguments
   * use. Nothing that it does with files is kept.
   */
  run(args: string[], files: Map<string, Uint8Array>): Answer {
    this.wasi.args = ["schrund", ...args];
    // Descriptors of the last call are gone: those of an instance would only grow.
    this.wasi.fds = [new OpenFile(new File([])), this.out, this.err, new Here(files)];
    const code = this.enter();
    return { code, out: this.out.taken(), err: new TextDecoder().decode(this.err.taken()) };
  }

  /** Bytes of memory that the instance holds. */
  get memory(): number {
    return this.instance?.memory.buffer.byteLength ?? 0;
  }

  private enter(): number {
    try {
      this.instance ??= this.made();
      return this.instance.answer();
    } catch (error) {
      // Whoever left in the middle may have left things locked.
      this.instance = undefined;
      if (error instanceof WASIProcExit) return error.code;
      if (!(error instanceof WebAssembly.RuntimeError || error instanceof RangeError)) throw error;
      this.err.fd_write(encoded(`${error.message}\n`));
      return BROKEN;
    }
  }

  private made(): Exports {
    const imports = { wasi_snapshot_preview1: this.wasi.wasiImport };
    const instance = new WebAssembly.Instance(this.module, imports);
    const exports = instance.exports as unknown as Exports;
    this.wasi.initialize({ exports } as unknown as Parameters<WASI["initialize"]>[0]);
    return exports;
  }
}

const encoder = new TextEncoder();
const encoded = (text: string) => encoder.encode(text);

/** Standard output or standard error: no terminal, kept until taken. */
class Pipe extends Fd {
  private pieces: Uint8Array[] = [];

  override fd_fdstat_get() {
    return { ret: 0, fdstat: new wasip1.Fdstat(wasip1.FILETYPE_UNKNOWN, 0) };
  }

  override fd_write(data: Uint8Array) {
    this.pieces.push(data);
    return { ret: 0, nwritten: data.byteLength };
  }

  taken(): Uint8Array {
    const whole = new Uint8Array(this.pieces.reduce((sum, piece) => sum + piece.length, 0));
    let at = 0;
    for (const piece of this.pieces) {
      whole.set(piece, at);
      at += piece.length;
    }
    this.pieces = [];
    return whole;
  }
}

/** The working folder, with files by names that may go up and down from it. */
class Here extends PreopenDirectory {
  constructor(files: Map<string, Uint8Array>) {
    super(".", tree(files));
  }

  override path_open(...[flags, path, ...rest]: Parameters<PreopenDirectory["path_open"]>) {
    return super.path_open(flags, from(path), ...rest);
  }

  override path_filestat_get(flags: number, path: string) {
    return super.path_filestat_get(flags, from(path));
  }
}

const from = (path: string) => [...HERE, path].join("/");

function tree(files: Map<string, Uint8Array>): Map<string, Inode> {
  const root = new Directory(new Map());
  folder(root, HERE);
  for (const [name, bytes] of files) {
    const parts: string[] = [];
    for (const part of from(name).split("/")) {
      if (part === "..") parts.pop();
      else if (part !== "" && part !== ".") parts.push(part);
    }
    const file = new File([], { readonly: true });
    // Given to the constructor they would be copied.
    file.data = bytes;
    folder(root, parts.slice(0, -1)).contents.set(parts.at(-1) ?? "", file);
  }
  return root.contents;
}

/** The folder of that path, made where it is not there. */
function folder(root: Directory, parts: string[]): Directory {
  return parts.reduce((at, part) => {
    const known = at.contents.get(part);
    if (known instanceof Directory) return known;
    const made = new Directory(new Map());
    at.contents.set(part, made);
    return made;
  }, root);
}
