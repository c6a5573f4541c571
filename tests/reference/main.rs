//! The physics against published and independently computed values, and against the laws that it must obey.

mod calibration;
mod faults;
mod laws;
mod plates;
mod published;
