//! Hashes of files: in their names, and as browsers check them.

use base64::{Engine as _, prelude::BASE64_STANDARD};
use sha2::{Digest, Sha256};

/// The first 16 hexadecimal digits of the SHA-256.
pub fn short_hash(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().take(8).map(|byte| format!("{byte:02x}")).collect()
}

/// The whole SHA-256 in the form of the `integrity` attribute (Subresource Integrity, W3C, section 3).
pub fn integrity(bytes: &[u8]) -> String {
    format!("sha256-{}", BASE64_STANDARD.encode(Sha256::digest(bytes)))
}

#[cfg(test)]
mod tests {
    use super::*;

    // Known answer: SHA-256 of "abc" (FIPS 180-4; the example values published with it).
    #[test]
    fn the_hash_is_sha_256() {
        assert_eq!(short_hash(b"abc"), "ba7816bf8f01cfea");
        assert_eq!(integrity(b"abc"), "sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=");
    }
}
