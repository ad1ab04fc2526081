//! The pad for lengths: a thumb types a measure as it is read off the tape, without the phone's keyboard.

use e2e::{Imperial, Page, Result, ensure, field};
use serde_json::json;

/// Only Chromium's driver can take the mouse away.
mod types_lengths_with_a_thumb {
    #[test]
    fn chromium() {
        e2e::run(
            e2e::Engine::Chromium,
            "types_lengths_with_a_thumb",
            super::types_lengths_with_a_thumb,
        );
    }
}

/// A key for a glove. [px]
const KEY: f64 = 56.0;

async fn key(page: &Page, face: &str) -> Result<()> {
    page.click_path(&format!("//div[@class='pad']//button[normalize-space(.)='{face}']")).await
}

async fn keys(page: &Page, faces: &str) -> Result<()> {
    for face in faces.split_whitespace() {
        key(page, face).await?;
    }
    Ok(())
}

async fn types_lengths_with_a_thumb(page: &mut Page) -> Result<()> {
    page.touch_only().await?;
    page.begin_project(Imperial).await?;
    let coarse = page.execute("return matchMedia('(pointer: coarse)').matches", vec![]).await?;
    ensure!(coarse == json!(true), "there is a mouse");
    page.add_sheet("stud_marks").await?;
    page.click(&field("board")).await?;
    page.wait_for(".pad button").await?;
    // 12 ft, and on to the next field with the pad's own key.
    keys(page, "1 2 ft Next").await?;
    let focused = "return document.activeElement.dataset.path";
    ensure!(page.execute(focused, vec![]).await? == json!("first_stud"), "the next field");
    // 8 3/8, a fraction in one tap; a wrong key is taken back.
    keys(page, "8 3/8 1 ⌫").await?;
    ensure!(page.value(&field("first_stud")).await? == "8 3/8", "8 3/8");
    key(page, "Next").await?;
    // 41 5/16: a sixteenth in two.
    keys(page, "4 1 /16 5/16").await?;
    ensure!(page.value(&field("studs.0")).await? == "41 5/16", "41 5/16");
    // Keys are for gloves, and the field stands clear of them with the answer.
    let clear = page
        .execute(
            "const pad = document.querySelector('.pad').getBoundingClientRect();
             const field = document.activeElement.getBoundingClientRect();
             const answer = document.querySelector('.headline.typing').getBoundingClientRect();
             const key = document.querySelector('.pad button').getBoundingClientRect();
             return [field.top > 50, field.bottom <= answer.top + 1, answer.bottom <= pad.top + 1,
                 pad.bottom <= innerHeight + 1, key.height, key.width]",
            vec![],
        )
        .await?;
    ensure!(
        clear.as_array().is_some_and(|all| all[..4].iter().all(|one| *one == json!(true))),
        "{clear}"
    );
    let size = |at: usize| clear[at].as_f64().unwrap_or_default();
    ensure!(size(4) >= KEY - 0.5 && size(5) >= KEY - 0.5, "a key is {} x {} px", size(5), size(4));
    page.screenshot("pad").await?;
    // The phone's own keyboard is one tap away, for this field only.
    key(page, "⌨").await?;
    let mode = "return document.activeElement.inputMode";
    ensure!(page.execute(mode, vec![]).await? == json!("decimal"), "the phone's keyboard");
    let gone = "return getComputedStyle(document.querySelector('.pad')).display === 'none'";
    page.wait_until("no pad", gone).await?;
    page.leave_field().await?;
    page.settle().await?;
    let mode = "return document.querySelector(arguments[0]).inputMode";
    let again = page.execute(mode, vec![json!(field("studs.0"))]).await?;
    ensure!(again == json!("none"), "the pad again");
    ensure!(page.value(&field("studs.0")).await?.starts_with("41 5/16"), "kept");
    Ok(())
}
