//! Printing exact amounts in the fractions a cook uses: `1½`, `⅔`, `2¼`.
