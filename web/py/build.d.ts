/** Made by the build: a hash of everything the engine is made of. */
export declare const BUILD: string;
/** The archives in the order of import, each with the files that make it up when joined. */
export declare const ARCHIVES: [string, string[]][];
