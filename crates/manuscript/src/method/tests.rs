//! Short invented sentences and the operations they give.
