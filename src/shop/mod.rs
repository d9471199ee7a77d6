//! The verbs: one deed, one transaction, one audit line.
