// The files of a shop as a tree: the shop's own file first, then its folders with theirs.

export interface Folder {
  /** Path from the shop folder; empty for the shop itself. */
  readonly path: string;
  readonly name: string;
  readonly files: readonly { readonly path: string; readonly name: string }[];
  readonly folders: readonly Folder[];
}

/** Every folder with its files and folders by name. */
export function treeOf(paths: Iterable<string>): Folder {
  return folderOf("", "", [...new Set(paths)].toSorted());
}

function folderOf(path: string, name: string, paths: readonly string[]): Folder {
  const rest = (p: string): string => p.slice(path.length);
  const inside = paths.filter((p) => p.startsWith(path));
  const names = new Set(
    inside
      .map(rest)
      .filter((p) => p.includes("/"))
      .map((p) => p.slice(0, p.indexOf("/"))),
  );
  return {
    path,
    name,
    files: inside.filter((p) => !rest(p).includes("/")).map((p) => ({ path: p, name: rest(p) })),
    folders: [...names].map((child) => folderOf(`${path}${child}/`, child, inside)),
  };
}
