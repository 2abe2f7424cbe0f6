/** Types of style modules and images, here so that a fresh checkout can be type-checked before it was ever built. */
/// <reference types="next" />
/// <reference types="next/image-types/global" />
