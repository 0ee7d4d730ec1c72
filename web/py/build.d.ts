/** Made by the build: a hash of everything the engine is made of. */
export declare const BUILD: string;
/** The archives in the order of import: the packages, the top of the core, then each of its floors. */
export declare const ARCHIVES: string[];
