### What has failed, and what to test next.
