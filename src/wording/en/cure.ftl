### Whether to seal, and when traffic may return.
