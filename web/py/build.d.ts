/** Made by the build: a hash of everything the engine is made of. */
export declare const BUILD: string;
/** The archives in the order of import. */
export declare const ARCHIVES: string[];
