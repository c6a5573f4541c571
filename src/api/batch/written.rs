//! The answer to a batch as it is written: item by item, as fast as its caller reads. When the caller leaves, what is not begun is never
//! computed.

use std::convert::Infallible;
use std::pin::Pin;
use std::task::{Context, Poll, ready};
use std::time::{Duration, Instant};
use std::vec;

use actix_web::body::{BodySize, MessageBody};
use actix_web::web::Bytes;
use futures_util::future::{LocalBoxFuture, ready as at_once};
use futures_util::stream::FuturesOrdered;
use futures_util::{FutureExt, StreamExt};

use super::items::{BatchJob, ItemAnswer, NotBegun};
use super::plan_batch::PlanBatchItem;
use crate::api::caller_shares::TakenShare;
use crate::api::content_coding::{CodedPart, PartStream};
use crate::api::respond;
use crate::calculation::material_estimate::{JobBill, PooledBill};
use crate::wording::Worded;

/// The parts of the answer, in order.
enum NextPart {
    Head,
    Items,
    Tail,
    Nothing,
}

/// The text of `PlanBatchReport`, of which no more is held than two items for each thread that computes.
pub(super) struct BatchBody {
    job: BatchJob,
    next: NextPart,
    left: vec::IntoIter<(usize, PlanBatchItem)>,
    running: FuturesOrdered<LocalBoxFuture<'static, ItemAnswer>>,
    tally: BatchTally,
    stream: PartStream,
    /// The bills of the items so far, where one of all is asked for.
    bills: Vec<JobBill>,
    /// The ids of items without a bill.
    without_bill: Vec<String>,
    /// How long the caller, ready to read, has waited for items; the time that it takes to read is its own.
    waited: Duration,
    waiting_since: Option<Instant>,
    /// The place of the batch, until its answer is written.
    _permit: TakenShare,
}

/// What has become of the items.
#[derive(Default)]
struct BatchTally {
    succeeded: usize,
    failed: usize,
    bytes: usize,
    computed: Duration,
}

impl BatchBody {
    /// The answer to these items.
    pub fn new(items: Vec<PlanBatchItem>, job: BatchJob, permit: TakenShare) -> Self {
        let left = items.into_iter().enumerate().collect::<Vec<_>>().into_iter();
        Self {
            stream: PartStream::new(job.coding),
            job,
            next: NextPart::Head,
            left,
            running: FuturesOrdered::new(),
            tally: BatchTally::default(),
            bills: Vec::new(),
            without_bill: Vec::new(),
            waited: Duration::ZERO,
            waiting_since: None,
            _permit: permit,
        }
    }

    /// Begins as many items as there are threads, and as many again, so that no thread waits for one that is slower, or for the reader.
    fn begin_items(&mut self) {
        let settings = &self.job.state.settings;
        while self.running.len() < 2 * settings.compute_threads {
            let Some((index, item)) = self.left.next() else { return };
            let patience = settings.limits.batch_deadline.saturating_sub(self.waited);
            let refused = if patience.is_zero() {
                Some(NotBegun::OutOfTime)
            } else if self.tally.bytes >= settings.limits.batch_answer {
                Some(NotBegun::AnswerTooLarge)
            } else {
                None
            };
            self.running.push_back(match refused {
                Some(reason) => at_once(self.job.refuse(index, item, reason)).boxed_local(),
                None => self.job.clone().answer(index, item, patience).boxed_local(),
            });
        }
    }

    /// The text of one bill for all items; `None` where it was not asked for.
    fn pooled_bill(&mut self) -> Option<String> {
        let left_out = std::mem::take(&mut self.without_bill);
        let bill = self.job.keeps_bills.then(|| PooledBill::of(&self.bills, left_out).worded(self.job.language))?;
        let text = respond::json_text(&bill, 16 * 1024).ok()?;
        String::from_utf8(text).ok()
    }

    /// The next result in the order of the items; `None` behind the last.
    fn poll_item(&mut self, context: &mut Context<'_>) -> Poll<Option<ItemAnswer>> {
        self.begin_items();
        let Poll::Ready(answer) = self.running.poll_next_unpin(context) else {
            self.waiting_since.get_or_insert_with(Instant::now);
            return Poll::Pending;
        };
        self.waited += self.waiting_since.take().map_or(Duration::ZERO, |since| since.elapsed());
        Poll::Ready(answer)
    }
}

impl BatchTally {
    /// Counts an answer.
    fn count(&mut self, answer: &ItemAnswer) {
        if answer.status == 200 {
            self.succeeded += 1;
        } else {
            self.failed += 1;
        }
        self.bytes += answer.length;
        self.computed += answer.took;
    }
}

impl MessageBody for BatchBody {
    type Error = Infallible;

    fn size(&self) -> BodySize {
        BodySize::Stream
    }

    fn poll_next(self: Pin<&mut Self>, context: &mut Context<'_>) -> Poll<Option<Result<Bytes, Infallible>>> {
        let this = self.get_mut();
        let text = match this.next {
            NextPart::Head => {
                this.next = NextPart::Items;
                [this.stream.begin(), &this.stream.plain(b"{\"results\":[")].concat()
            }
            NextPart::Items => {
                if let Some(answer) = ready!(this.poll_item(context)) {
                    this.job.state.metrics.count_item(answer.status);
                    this.tally.count(&answer);
                    match answer.bill {
                        Some((_, Some(bill))) => this.bills.push(bill),
                        Some((id, None)) => this.without_bill.push(id),
                        None => {}
                    }
                    return Poll::Ready(Some(Ok(this.stream.part(answer.text).into())));
                }
                this.next = NextPart::Tail;
                return Pin::new(this).poll_next(context);
            }
            NextPart::Tail => {
                this.next = NextPart::Nothing;
                let BatchTally { succeeded, failed, .. } = this.tally;
                let pooled = this.pooled_bill().map_or_else(String::new, |bill| format!(",\"pooled_bill\":{bill}"));
                let tail = format!("],\"succeeded\":{succeeded},\"failed\":{failed}{pooled}}}");
                let tail = CodedPart::new(tail.into_bytes(), this.job.coding);
                [this.stream.part(tail), this.stream.end()].concat()
            }
            NextPart::Nothing => return Poll::Ready(None),
        };
        Poll::Ready(Some(Ok(text.into())))
    }
}

impl Drop for BatchBody {
    fn drop(&mut self) {
        let BatchTally { succeeded, failed, bytes, computed } = self.tally;
        if !matches!(self.next, NextPart::Nothing) {
            self.job.state.metrics.abandoned.inc();
        }
        let computed_micros = u64::try_from(computed.as_micros()).unwrap_or(u64::MAX);
        let request_id = self.job.request_id.as_str();
        let not_begun = self.left.len();
        tracing::info!(request_id, succeeded, failed, not_begun, bytes, computed_micros, "batch");
    }
}
