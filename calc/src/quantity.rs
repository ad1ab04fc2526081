//! What a tape, a label or a meter says: text and quantities.
