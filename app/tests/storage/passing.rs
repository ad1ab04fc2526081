//! Links and codes: what comes out is what went in, and what means harm is refused.

use super::*;
use app::storage::MOST_SETS;
use app::transfer::{
    Arrived, BadLink, Offer, Taken, code_links, data_of, leave, look_at, pack, project_of, take_in,
    to_letters, unpack,
};

const PAGE: &str = "https://example.org/rig/";

/// Numbers that do not pack: so that a project needs several codes.
fn large(id: &str, seed: u32) -> Project {
    let mut project = project(id, "Field bus");
    let mut drawn = seed;
    let mut words = String::new();
    for _ in 0..400 {
        drawn = drawn.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        words.push_str(&drawn.to_string());
    }
    project.add_sheet("coating", "Floor", serde_json::json!({ "note": words }));
    project
}

fn address(link: &str) -> &str {
    link.strip_prefix(PAGE).unwrap().strip_prefix("#/get/").unwrap()
}

/// What a link brings, where codes are kept.
async fn receive(store: Store, text: &str) -> Result<Arrived, String> {
    look_at(store, text, true).await
}

/// Takes a whole project in, as someone does who says yes.
async fn take(store: Store, text: &str) -> Taken {
    take_in(store, &offer(store, text).await).unwrap()
}

async fn offer(store: Store, text: &str) -> Offer {
    match receive(store, text).await {
        Ok(Arrived::Whole(offer)) => offer,
        other => panic!("no offer: {other:?}"),
    }
}

#[wasm_bindgen_test]
async fn packing_is_undone_by_unpacking_and_stops_at_its_cap() {
    for length in [0, 1, 70_000] {
        let bytes: Vec<u8> = (0..length).map(|n: u32| (n.wrapping_mul(n) >> 3) as u8).collect();
        let packed = pack(&bytes).await.unwrap();
        assert_eq!(unpack(&packed, bytes.len()).await, Ok(bytes.clone()));
        if length > 0 {
            assert_eq!(unpack(&packed, bytes.len() - 1).await, Err(BadLink::TooLong));
            assert_eq!(unpack(&packed[..packed.len() - 1], 100_000).await, Err(BadLink::Damaged));
        }
    }
    // Thirty million zeros pack to some 30 KB; no more than the cap is ever held.
    let bomb = pack(&vec![0; 30_000_000]).await.unwrap();
    assert!(bomb.len() < 100_000);
    assert_eq!(unpack(&bomb, MAX_BYTES).await, Err(BadLink::TooLong));
    let refused = project_of(&to_letters(&bomb)).await.unwrap_err();
    assert!(refused.contains("more than a project can have"), "{refused}");
    assert_eq!(unpack(b"\xff\xff\xff", 100).await, Err(BadLink::Damaged));
}

#[wasm_bindgen_test]
async fn a_link_is_taken_in_beside_what_is_here() {
    let store = fresh();
    let mine = large("p1", 1);
    let data = data_of(&mine).await.unwrap();
    // Looked at, nothing is kept.
    let before = everything();
    let offered = offer(store, &data).await;
    assert_eq!(everything(), before);
    assert_eq!((offered.bytes, offered.beside), (mine.to_text().len(), false));
    assert!(offered.room > 0.0 && offered.room < 0.01, "{}", offered.room);
    assert_eq!(take(store, &data).await, Taken { id: "p1".into(), beside: None });
    assert_eq!(store.received("p1").as_deref(), Some(""));
    assert_eq!(store.load("p1").unwrap().project, mine);
    // Once more: nothing is added.
    assert_eq!(receive(store, &data).await, Ok(Arrived::Known("p1".into())));
    // Mine goes on; what comes stands beside it, once.
    let loaded = store.load("p1").unwrap();
    let changed = renamed(&loaded.project, "Mine");
    store.save(&changed, loaded.revision).unwrap();
    assert!(offer(store, &data).await.beside);
    let Taken { id, beside } = take(store, &data).await;
    assert_eq!(beside.as_deref(), Some("p1"));
    assert_eq!(store.received(&id).as_deref(), Some("p1"));
    assert_eq!(store.load("p1").unwrap().project, changed);
    assert_eq!(receive(store, &data).await, Ok(Arrived::Known(id.clone())));
    assert_eq!(store.list().len(), 2);
    store.forget(&id);
    assert_eq!(store.received(&id), None);
}

#[wasm_bindgen_test]
async fn codes_come_in_any_order_twice_and_mixed_with_others() {
    let store = fresh();
    let (one, two) = (large("p1", 1), large("p2", 2));
    let links = |data: String| code_links(PAGE, &data).unwrap();
    let ones = links(data_of(&one).await.unwrap());
    let twos = links(data_of(&two).await.unwrap());
    assert!(ones.len() > 2 && ones.len() == twos.len(), "{} and {}", ones.len(), twos.len());
    let count = ones.len();
    // A sequence that is new here is asked about, and nothing of it is kept.
    let before = everything();
    let first = look_at(store, address(&ones[1]), false).await;
    assert_eq!(first, Ok(Arrived::FirstPart { number: 2, count }));
    assert_eq!(everything(), before);
    for (index, link) in ones.iter().enumerate().rev().take(count - 1) {
        for _ in 0..2 {
            let Ok(Arrived::Waiting { number, missing, count: of }) =
                receive(store, address(link)).await
            else {
                panic!("not waiting")
            };
            assert_eq!((number, of), (index + 1, count));
            assert_eq!(missing, (1..=index).collect::<Vec<_>>());
        }
        receive(store, address(&twos[index])).await.unwrap();
    }
    assert_eq!(store.part_sets().len(), 2);
    // Once a sequence is known here, its other codes are kept without a further question.
    let kept = look_at(store, address(&ones[0]), false).await;
    let Ok(Arrived::Whole(offered)) = kept else { panic!("not complete: {kept:?}") };
    assert!(store.list().is_empty(), "kept without having been asked");
    assert_eq!(take_in(store, &offered), Ok(Taken { id: "p1".into(), beside: None }));
    assert_eq!(store.load("p1").unwrap().project, one);
    assert_eq!(store.part_sets().len(), 1, "the other sequence still waits");
    // Who does not want it keeps nothing of it, the codes included.
    leave(store, &offer(store, address(&twos[0])).await);
    assert!(!store.has("p2"));
    assert_eq!(project_of(&data_of(&two).await.unwrap()).await, Ok(two));
    assert!(store.part_sets().is_empty());
    assert!(!everything().iter().any(|(key, _)| key.contains(" part ")));
}

#[wasm_bindgen_test]
async fn parts_of_more_sequences_than_can_wait_make_room_oldest_first() {
    let store = fresh();
    for number in 0..MOST_SETS + 2 {
        let text = format!("1.2.{number}.AAAA");
        assert!(receive(store, &text).await.is_ok());
        wait(5).await;
    }
    let ids: Vec<String> = store.part_sets().into_iter().map(|set| set.id).collect();
    assert_eq!(ids, ["4", "3", "2"]);
    // What does not belong together is said, and forgotten.
    let refused = receive(store, "2.2.4.AAAA").await.unwrap_err();
    assert!(refused.contains("do not belong together"), "{refused}");
    assert_eq!(store.part_sets().len(), MOST_SETS - 1);
    assert!(store.list().is_empty());
}

#[wasm_bindgen_test]
async fn without_the_browser_s_streams_it_is_said() {
    run("window.kept_streams = [window.CompressionStream, window.DecompressionStream];
         delete window.CompressionStream; delete window.DecompressionStream;");
    let data = data_of(&project("p1", "One")).await;
    let refused = receive(fresh(), "AAAA").await;
    run("[window.CompressionStream, window.DecompressionStream] = window.kept_streams;");
    assert_eq!(data, None);
    assert!(refused.unwrap_err().contains("cannot unpack links"));
}
