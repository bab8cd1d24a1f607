import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import ts from "typescript";

/** @typedef {{ file: string, name: string }} Named a declaration: the file that it stands in, and what it is called there */
/** @typedef {{ own: Map<string, string>, uses: Map<string, string[]>, from: Map<string, Named>, given: Map<string, Named> }} Declared */

/**
 * The declarations of all that an entry exports, and of what these mention, as one file that needs no other: what
 * TypeScript declares of the source files, with only those statements that are reached. Fails where a reached file leaves
 * a type to be inferred, where a package's type would show, and where two types of one name meet.
 *
 * @param {string} entry path of a source file
 * @returns {string}
 */
export function declarationsOf(entry) {
  /** @type {Map<string, Declared>} */
  const read = new Map();
  /** @type {Map<string, string>} name → file */
  const taken = new Map();
  /** @type {string[]} */
  const statements = [];
  const declared = (/** @type {string} */ file) => {
    if (!file.endsWith(".ts")) throw new Error(`a type of the package ${file} may not show in ${entry}`);
    const known = read.get(file) ?? declaredIn(file);
    read.set(file, known);
    return known;
  };
  const reach = (/** @type {Named} */ { file, name }) => {
    const { own, uses, from, given } = declared(file);
    const next = from.get(name) ?? given.get(name);
    const statement = own.get(name);
    if (statement === undefined && next !== undefined) {
      if (next.name !== name) throw new Error(`${file}: ${name} may not change its name on its way out`);
      return reach(next);
    }
    if (statement === undefined) return;
    if (taken.get(name) === file) return;
    if (taken.has(name)) throw new Error(`two types are called ${name}: in ${taken.get(name)} and ${file}`);
    taken.set(name, file);
    statements.push(statement);
    for (const each of uses.get(name) ?? []) reach({ file, name: each });
  };
  const { given } = declared(entry);
  for (const name of given.keys()) reach({ file: entry, name });
  return `${statements.join("\n")}\nexport { ${exported(entry, given, declared)} };\n`;
}

/** The names that an entry gives, types told apart. */
function exported(
  /** @type {string} */ entry,
  /** @type {Map<string, Named>} */ given,
  /** @type {(file: string) => Declared} */ declared,
) {
  const isType = (/** @type {Named} */ { file, name }) => {
    const { own, from, given: onward } = declared(file);
    const statement = own.get(name);
    if (statement !== undefined) return /^declare (?:interface|type) /m.test(statement);
    const next = from.get(name) ?? onward.get(name);
    if (next === undefined) throw new Error(`${entry}: ${name} leads nowhere`);
    return isType(next);
  };
  return [...given]
    .map(([name, at]) => `${isType(at) ? "type " : ""}${name}`)
    .sort()
    .join(", ");
}

/** @returns {Declared} */
function declaredIn(/** @type {string} */ file) {
  const { outputText, diagnostics = [] } = ts.transpileDeclaration(readFileSync(file, "utf8"), {
    fileName: file,
    reportDiagnostics: true,
    compilerOptions: { target: ts.ScriptTarget.ES2022, module: ts.ModuleKind.ESNext, isolatedDeclarations: true },
  });
  const [wrong] = diagnostics;
  if (wrong !== undefined) throw new Error(`${file}: ${ts.flattenDiagnosticMessageText(wrong.messageText, "\n")}`);
  const source = ts.createSourceFile(file, outputText, ts.ScriptTarget.ES2022, true);
  /** @type {Declared} */
  const found = { own: new Map(), uses: new Map(), from: new Map(), given: new Map() };
  for (const statement of source.statements) {
    if (ts.isImportDeclaration(statement)) bind(file, statement.importClause?.namedBindings, statement, found.from);
    else if (ts.isExportDeclaration(statement)) bind(file, statement.exportClause, statement, found.given);
    else
      for (const name of namesOf(statement)) {
        found.own.set(name, asLocal(statement, outputText));
        found.uses.set(name, mentionedIn(statement));
        found.given.set(name, { file, name });
      }
  }
  return found;
}

/** Notes the names that an import or a re-export brings. */
function bind(
  /** @type {string} */ file,
  /** @type {ts.NamedImportBindings | ts.NamedExportBindings | undefined} */ bindings,
  /** @type {ts.ImportDeclaration | ts.ExportDeclaration} */ { moduleSpecifier },
  /** @type {Map<string, Named>} */ into,
) {
  if (bindings === undefined || moduleSpecifier === undefined || !ts.isStringLiteral(moduleSpecifier)) return;
  if (!ts.isNamedImports(bindings) && !ts.isNamedExports(bindings)) throw new Error(`${file}: names cannot be told`);
  const within = moduleSpecifier.text.startsWith(".");
  const other = within ? join(dirname(file), moduleSpecifier.text) : moduleSpecifier.text;
  for (const { name, propertyName } of bindings.elements)
    into.set(name.text, { file: other, name: (propertyName ?? name).text });
}

/** @returns {string[]} */
function namesOf(/** @type {ts.Statement} */ statement) {
  if (ts.isVariableStatement(statement))
    return statement.declarationList.declarations.map(({ name }) => name.getText());
  if (ts.isInterfaceDeclaration(statement) || ts.isTypeAliasDeclaration(statement)) return [statement.name.text];
  if (ts.isFunctionDeclaration(statement) && statement.name) return [statement.name.text];
  return [];
}

/** Names of types that a statement mentions. */
function mentionedIn(/** @type {ts.Node} */ node) {
  /** @type {Set<string>} */
  const names = new Set();
  const visit = (/** @type {ts.Node} */ each) => {
    if (ts.isTypeReferenceNode(each) || ts.isTypeQueryNode(each)) {
      const name = ts.isTypeReferenceNode(each) ? each.typeName : each.exprName;
      names.add(name.getText().split(".")[0] ?? "");
    } else if (ts.isExpressionWithTypeArguments(each)) names.add(each.expression.getText());
    ts.forEachChild(each, visit);
  };
  visit(node);
  return [...names];
}

/** A statement with what stands above it as its description, and not exported: what the entry gives is said at the end. */
function asLocal(/** @type {ts.Statement} */ statement, /** @type {string} */ text) {
  const about = ts.getLeadingCommentRanges(text, statement.getFullStart())?.at(-1);
  const docs = about === undefined ? "" : `${text.slice(about.pos, about.end)}\n`;
  const modifiers = ts.canHaveModifiers(statement) ? (ts.getModifiers(statement) ?? []) : [];
  return `${docs}declare ${text.slice(modifiers.at(-1)?.end ?? statement.getStart(), statement.end).trim()}`;
}
