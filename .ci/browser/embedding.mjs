// Runs the lines of TypeScript of docs/embedding.md, and checks them and the types by the compiler of TypeScript.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import ts from 'typescript';

/** What the lines take from the page around them. */
const AROUND = {
  mySet: 'declare const mySet: string;',
  job: 'declare const job: Record<string, unknown>; declare const stockText: string;',
  hose: 'declare const hose: object;',
};

/** The lines of TypeScript in a document, block by block. */
function blocks(text) {
  return [...text.matchAll(/^```ts\n([\s\S]*?)^```$/gm)].map((found) => found[1]);
}

/** What TypeScript finds wrong with the lines, and with how an answer is handled that does not know every kind. */
function typeFaults(lines, types) {
  const folder = mkdtempSync(join(tmpdir(), 'airfit-types-'));
  try {
    writeFileSync(join(folder, 'airfit.d.ts'), types);
    const files = lines.map((block, i) => {
      const own = /const hose =/.test(block);
      const around = Object.entries(AROUND)
        .filter(([name]) => new RegExp(`\\b${name}\\b`).test(block) && !(name === 'hose' && own))
        .map(([, line]) => line);
      const names = /\b(identify|willItGo|run|select)\(/.exec(block)[1];
      const imports = /^import \{/m.test(block) ? '' : `import { ${names} } from "airfit";\n`;
      const file = join(folder, `block${i}.ts`);
      writeFileSync(file, imports + around.join('\n') + '\n' + block + 'export {};\n');
      return file;
    });
    const program = ts.createProgram(files, {
      strict: true,
      noEmit: true,
      target: ts.ScriptTarget.ES2022,
      module: ts.ModuleKind.ES2022,
      moduleResolution: ts.ModuleResolutionKind.Bundler,
      lib: ['lib.es2022.d.ts', 'lib.dom.d.ts'],
      types: [],
      paths: { airfit: [join(folder, 'airfit.d.ts')] },
    });
    return ts
      .getPreEmitDiagnostics(program)
      .map((fault) => `${fault.file?.fileName.replace(folder, '') ?? ''}: ${ts.flattenDiagnosticMessageText(fault.messageText, ' ')}`);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Runs the first block: what it prints. */
async function printed(block, module, mySet) {
  const code = block.replace('"airfit"', JSON.stringify(pathToFileURL(module).href));
  const script = ts.transpileModule(code, { compilerOptions: { module: ts.ModuleKind.ES2022, target: ts.ScriptTarget.ES2022 } });
  const body = script.outputText
    .replace(/import \{([^}]*)\} from ("[^"]*");/, 'const {$1} = await import($2);')
    .replace(/console\.log/g, 'tell');
  const lines = [];
  const AsyncFunction = (async () => {}).constructor;
  await new AsyncFunction('mySet', 'tell', body)(mySet, (...told) => lines.push(told));
  return lines;
}

/** The faults of the document and of the types; empty if there are none. */
export async function faultsOfEmbedding(document, types, module, mySet) {
  const lines = blocks(readFileSync(document, 'utf8'));
  const faults = typeFaults(lines, readFileSync(types, 'utf8'));
  const exported = [...readFileSync(types, 'utf8').matchAll(/^export function (\w+)/gm)].map((each) => each[1]);
  const airfit = await import(pathToFileURL(module).href);
  const real = Object.keys(airfit).filter((name) => name !== 'main');
  if (exported.sort().join() !== real.sort().join()) {
    faults.push(`the types tell ${exported}, the module has ${real}`);
  }
  const told = (await printed(lines[0], module, mySet)).flat();
  if (told.length !== 5 || told.some((text) => !text || !text.length)) {
    faults.push(`the first lines of ${document} print ${JSON.stringify(told)}`);
  }
  return faults;
}
