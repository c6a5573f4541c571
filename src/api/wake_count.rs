//! How often something that waits is woken. The HTTP library wakes what a connection waits for without end when its caller has sent more
//! of the next requests than it buffers, and its thread serves nobody else meanwhile.

/// How often one wait may be woken: by its result, its deadline, and whatever else comes on its connection. Choice made here.
const MAX_WAKES: u32 = 10_000;

/// Counts the wakes of one wait.
#[derive(Default)]
pub struct WakeCount(u32);

impl WakeCount {
    /// Counts a wake; whether there were too many.
    pub fn is_flooded(&mut self) -> bool {
        self.0 = self.0.saturating_add(1);
        self.0 > MAX_WAKES
    }
}
