//! The graph of crates, as cargo resolves it on this machine.

use cargo_metadata::{DependencyKind, Metadata, MetadataCommand, PackageId};
use std::collections::{BTreeSet, HashMap};
use std::process::Command;

/// The graph.
pub struct Crates {
    metadata: Metadata,
    /// What each package is built and runs with: normal and build dependencies, not those of its tests.
    edges: HashMap<PackageId, Vec<PackageId>>,
}

impl Crates {
    /// Asks cargo. Only this platform's part: crates for others may not be on this machine.
    pub fn read() -> Self {
        let told = Command::new("rustc").arg("-vV").output().expect("rustc is there when tests are built");
        let told = String::from_utf8_lossy(&told.stdout).into_owned();
        let host = told.lines().find_map(|line| line.strip_prefix("host: ")).expect("rustc names its host");
        let metadata = MetadataCommand::new()
            .manifest_path(concat!(env!("CARGO_MANIFEST_DIR"), "/../Cargo.toml"))
            .other_options(["--filter-platform".to_owned(), host.to_owned()])
            .exec()
            .expect("cargo reads the workspace");
        let resolve = metadata.resolve.as_ref().expect("the graph was asked for");
        let edges = resolve.nodes.iter().map(|node| {
            let runs = node
                .deps
                .iter()
                .filter(|dependency| dependency.dep_kinds.iter().any(|kind| kind.kind != DependencyKind::Development));
            (node.id.clone(), runs.map(|dependency| dependency.pkg.clone()).collect())
        });
        Self { edges: edges.collect(), metadata }
    }

    /// Names of all crates that the workspace's crate `from` is built with, however far.
    pub fn reached_by(&self, from: &str) -> BTreeSet<String> {
        let start = self.metadata.workspace_packages().into_iter().find(|package| package.name == from);
        let start = start.unwrap_or_else(|| panic!("the workspace has a crate {from}"));
        let mut reached = BTreeSet::from([&start.id]);
        let mut to_do = vec![&start.id];
        while let Some(next) = to_do.pop() {
            to_do.extend(self.edges[next].iter().filter(|id| reached.insert(id)));
        }
        reached.into_iter().map(|id| self.metadata[id].name.to_string()).collect()
    }

    /// Crates of the workspace that name, among all their own dependencies, one for which `which` is true.
    pub fn members_naming(&self, which: impl Fn(&str) -> bool) -> Vec<String> {
        let members = self.metadata.workspace_packages().into_iter();
        let naming = members.filter(|package| package.dependencies.iter().any(|dependency| which(&dependency.name)));
        naming.map(|package| package.name.to_string()).collect()
    }
}
