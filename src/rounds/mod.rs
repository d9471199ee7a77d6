//! What happens by itself: reminders, delivery, tidying.
