#![no_main]

loopwright_fuzz::request!("material-estimate");
